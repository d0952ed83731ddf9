using System.Net;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class SetUpTests
{
    [Fact]
    public async Task The_server_says_where_and_the_form_makes_the_maker_with_the_chosen_samples()
    {
        await using var shop = await TestShop.OpenAsync();
        using var visitor = shop.Visit();
        var form = await visitor.FollowAsync(shop.SetUpPath);
        Assert.Equal(HttpStatusCode.OK, form.Status);
        Assert.Contains("no-store", form.Headers["Cache-Control"], StringComparison.Ordinal);
        Assert.Equal(3, form.Html.QuerySelectorAll("input[name=Samples][checked]").Length);

        var done = await visitor.FillAsync(shop.SetUpPath, "/setup", [.. TestShop.SetUpFields(zone: "Pacific/Auckland"), ("Samples", "hazel-diamonds")]);
        Assert.Equal((HttpStatusCode.SeeOther, "/studio"), (done.Status, done.Location));
        var studio = await visitor.GetAsync("/studio");
        Assert.Equal("Hazel diamonds", Assert.Single(studio.Html.QuerySelectorAll("ul.bench h2")).TextContent.Trim());
        Assert.Equal("Pacific/Auckland", (await shop.MakerAsync()).TimeZone);
    }

    [Fact]
    public async Task A_form_with_mistakes_says_all_of_them_keeps_what_was_typed_and_makes_nothing()
    {
        await using var shop = await TestShop.OpenAsync();
        using var visitor = shop.Visit();
        var answer = await visitor.FillAsync(shop.SetUpPath, "/setup", ("StudioName", "<Tansy> & co"), ("Handle", "Tansy Lane"), ("Email", "nobody"), ("Passphrase", "too short"), ("PassphraseAgain", "otherwise"), ("TimeZone", "Moon/Base"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.Status);
        var wrong = answer.Html.QuerySelectorAll("[aria-invalid=true]").Select(field => field.GetAttribute("name"));
        Assert.Equal(["Handle", "Email", "Passphrase", "PassphraseAgain", "TimeZone"], wrong);
        Assert.Equal("<Tansy> & co", answer.Html.QuerySelector("[name=StudioName]")!.GetAttribute("value"));
        Assert.DoesNotContain("too short", answer.Text, StringComparison.Ordinal);
        Assert.False(await shop.Makers.AnyAsync(TestContext.Current.CancellationToken));
    }

    [Theory]
    [InlineData("/setup")]
    [InlineData("/setup?code=")]
    [InlineData("/setup?code=0123456789abcdefghjkmnpqrs")]
    public async Task Another_code_opens_nothing(string path)
    {
        await using var shop = await TestShop.OpenAsync();
        using var visitor = shop.Visit();
        var answer = await visitor.GetAsync(path);
        Assert.Equal(HttpStatusCode.Forbidden, answer.Status);
        Assert.Empty(answer.Html.QuerySelectorAll("form"));
        var sent = await visitor.PostAsync(shop.SetUpPath, "/setup", [("Code", "0123456789abcdefghjkmnpqrs"), .. TestShop.SetUpFields()]);
        Assert.Equal(HttpStatusCode.Forbidden, sent.Status);
        Assert.False(await shop.Makers.AnyAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task The_code_works_once()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        using var visitor = shop.Visit();
        Assert.Equal(HttpStatusCode.Gone, (await visitor.GetAsync(shop.SetUpPath)).Status);
        var again = await maker.PostAsync("/studio", shop.SetUpPath, [("Code", shop.SetUpPath[(shop.SetUpPath.IndexOf('=', StringComparison.Ordinal) + 1)..]), .. TestShop.SetUpFields()]);
        Assert.Equal(HttpStatusCode.Gone, again.Status);
        maker.Dispose();
    }

    [Fact]
    public async Task Codes_cannot_be_guessed_at_leisure()
    {
        await using var shop = await TestShop.OpenAsync();
        using var visitor = shop.Visit();
        for (var time = 0; time < AccountThrottles.Tries; time++)
        {
            Assert.Equal(HttpStatusCode.Forbidden, (await visitor.GetAsync("/setup?code=guess")).Status);
        }

        var refused = await visitor.GetAsync(shop.SetUpPath);
        Assert.Equal((HttpStatusCode.TooManyRequests, "300"), (refused.Status, refused.Headers["Retry-After"]));
        shop.Clock.Now += AccountThrottles.Window;
        Assert.Equal(HttpStatusCode.OK, (await visitor.FollowAsync(shop.SetUpPath)).Status);
    }

    [Fact]
    public async Task The_code_goes_from_the_printed_address_into_a_cookie_and_is_gone_when_the_shop_is_set_up()
    {
        await using var shop = await TestShop.OpenAsync();
        using var visitor = shop.Visit();
        var code = shop.SetUpPath.Split('=')[1];
        var sent = await visitor.GetAsync(shop.SetUpPath);
        Assert.Equal((HttpStatusCode.SeeOther, "/setup"), (sent.Status, sent.Location));
        Assert.Contains("no-store", sent.Headers["Cache-Control"], StringComparison.Ordinal);
        Assert.Matches($"^patternshop.setup={code}; max-age=3600; path=/; samesite=lax; httponly$", sent.Headers["Set-Cookie"]);
        Assert.Equal("Set up your shop", (await visitor.GetAsync("/setup")).Heading);

        var done = await visitor.FillAsync("/setup", "/setup", TestShop.SetUpFields());
        Assert.Equal("/studio", done.Location);
        Assert.Contains("patternshop.setup=; expires=Thu, 01 Jan 1970", done.Headers["Set-Cookie"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task While_there_is_no_maker_readers_see_samples_and_nobody_can_sign_in()
    {
        await using var shop = await TestShop.OpenAsync();
        using var visitor = shop.Visit();
        Assert.NotEmpty((await visitor.GetAsync("/")).Html.QuerySelectorAll("ul.shelf li"));
        var signIn = await visitor.GetAsync("/sign-in");
        Assert.Equal(HttpStatusCode.NotFound, signIn.Status);
        Assert.Empty(signIn.Html.QuerySelectorAll("form"));
    }
}
