using System.Net;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>The operator's commands, run beside a server on the same data folder.</summary>
public sealed class OperatorCommandTests
{
    private const string New = "nine new willow baskets";

    [Fact]
    public async Task A_new_passphrase_opens_the_workbench_and_the_old_one_and_old_sessions_do_not()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var done = await RunAsync(New + "\nnot read\n", "passphrase", TestShop.Email, "--data", shop.DataFolder);
        Assert.Equal((0, ""), (done.Code, done.Errors));
        Assert.DoesNotContain(New, done.Output, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, (await maker.GetAsync("/studio")).Status);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await shop.SignInAsync(maker)).Status);
        Assert.Equal("/studio", (await shop.SignInAsync(maker, passphrase: New)).Location);
        maker.Dispose();
    }

    [Fact]
    public async Task Whom_strangers_keep_out_the_operator_lets_in()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        maker.Dispose();
        shop.Clock.Now = TimeProvider.System.GetUtcNow();
        using var visitor = shop.Visit();
        for (var time = 0; time < AccountThrottles.Tries; time++)
        {
            await shop.SignInAsync(visitor, passphrase: "wrong");
        }

        var invitation = (await RunAsync(New, "passphrase", TestShop.Email, "--data", shop.DataFolder)).Output.TrimEnd().Split('\n')[^1];
        Assert.StartsWith("/sign-in?known=", invitation, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await visitor.GetAsync(invitation[..^1])).Status);
        Assert.Equal(HttpStatusCode.TooManyRequests, (await shop.SignInAsync(visitor, passphrase: New)).Status);
        Assert.Equal((HttpStatusCode.SeeOther, "/sign-in"), ((await visitor.GetAsync(invitation)).Status, (await visitor.GetAsync(invitation)).Location));
        Assert.Equal("/studio", (await shop.SignInAsync(visitor, passphrase: New)).Location);
        shop.Clock.Now += TimeSpan.FromMinutes(61);
        using var late = shop.Visit();
        Assert.Equal(HttpStatusCode.OK, (await late.GetAsync(invitation)).Status);
        // what a browser holds invites nobody
        var mark = visitor.Cookies["patternshop.browser"]!.Value;
        Assert.Equal(HttpStatusCode.OK, (await late.GetAsync("/sign-in?known=" + mark)).Status);
    }

    [Theory]
    [InlineData("nobody@example.org", New, "No maker here has the e-mail address nobody@example.org.")]
    [InlineData(TestShop.Email, "short", "fewer than 15 characters")]
    [InlineData(TestShop.Email, "", "fewer than 15 characters")]
    public async Task A_passphrase_that_cannot_be_set_is_said_so_and_changes_nothing(string email, string passphrase, string said)
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var done = await RunAsync(passphrase, "passphrase", email, "--data", shop.DataFolder);
        Assert.Equal(1, done.Code);
        Assert.Contains(said, done.Errors, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await maker.GetAsync("/studio")).Status);
        maker.Dispose();
    }

    /// <summary>Such as <c>passphrase EMAIL &lt; /dev/zero</c>.</summary>
    [Fact]
    public async Task A_passphrase_without_an_end_is_refused()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        using var endless = new EndlessText();
        using var output = new StringWriter { NewLine = "\n" };
        using var errors = new StringWriter { NewLine = "\n" };
        Assert.Equal(1, await PassphraseCommand.RunAsync([TestShop.Email, "--data", shop.DataFolder], endless, output, errors));
        Assert.Equal("The passphrase has more than 200 characters. Make it shorter.\n", errors.ToString());
        maker.Dispose();
    }

    [Fact]
    public async Task The_public_address_is_set_shown_and_asked_when_it_is_this_machine()
    {
        await using var shop = await TestShop.OpenAsync();
        var nothing = await RunAsync("", "public-address", "--data", shop.DataFolder);
        Assert.Equal(1, nothing.Code);
        Assert.Contains("No public address is set", nothing.Errors, StringComparison.Ordinal);

        var here = shop.Address.ToString().TrimEnd('/');
        var set = await RunAsync("", "public-address", here + "/", "--data", shop.DataFolder);
        Assert.Equal((0, $"The public address is {here}. Versions issued from now on carry it.\nThe server there is well.\n"), (set.Code, set.Output));
        var shown = await RunAsync("", "public-address", "--data", shop.DataFolder);
        Assert.Equal((0, $"{here}\nThe server there is well.\n"), (shown.Code, shown.Output));
    }

    [Fact]
    public async Task Another_address_is_not_called()
    {
        await using var shop = await TestShop.OpenAsync();
        var set = await RunAsync("", "public-address", "https://patterns.example.org", "--data", shop.DataFolder);
        Assert.Equal((0, "The public address is https://patterns.example.org. Versions issued from now on carry it.\nOpen it in a browser to see that it leads here.\n"), (set.Code, set.Output));
        Assert.Equal("https://patterns.example.org", await shop.Makers.PublicAddressAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_server_that_is_not_there_is_a_failure()
    {
        await using var shop = await TestShop.OpenAsync();
        var set = await RunAsync("", "public-address", "http://127.0.0.1:1", "--data", shop.DataFolder);
        Assert.Equal(1, set.Code);
        Assert.Contains("No server answered there", set.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("http://patterns.example.org", "Use https")]
    [InlineData("patterns.example.org", "not a web address")]
    [InlineData("https://patterns.example.org/shop", "more than a scheme")]
    public async Task A_public_address_of_a_bad_form_is_not_kept(string address, string said)
    {
        await using var shop = await TestShop.OpenAsync();
        var set = await RunAsync("", "public-address", address, "--data", shop.DataFolder);
        Assert.Equal(1, set.Code);
        Assert.Contains(said, set.Errors, StringComparison.Ordinal);
        Assert.Null(await shop.Makers.PublicAddressAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Health_asks_a_server_on_this_machine_only()
    {
        await using var shop = await TestShop.OpenAsync();
        Assert.Equal((0, "The server there is well.\n", ""), await RunAsync("", "health", shop.Address.ToString()));
        Assert.Equal(1, (await RunAsync("", "health", "http://127.0.0.1:1")).Code);
        Assert.Equal(2, (await RunAsync("", "health", "https://patterns.example.org")).Code);
    }

    [Theory]
    [InlineData("passphrase")]
    [InlineData("passphrase", "a@example.org", "b@example.org")]
    [InlineData("passphrase", "a@example.org", "--data")]
    [InlineData("public-address", "a", "b")]
    [InlineData("health", "a", "b")]
    public async Task A_wrong_call_says_how_it_is_called(params string[] args)
    {
        var done = await RunAsync("", args);
        Assert.Equal(2, done.Code);
        Assert.StartsWith($"usage: {args[0]}", done.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_folder_that_is_not_there_is_not_made()
    {
        using var folder = new Folder();
        var missing = Path.Combine(folder.Path, "data");
        var done = await RunAsync(New, "passphrase", TestShop.Email, "--data", missing);
        Assert.Equal(2, done.Code);
        Assert.Contains(missing, done.Errors, StringComparison.Ordinal);
        Assert.False(Directory.Exists(missing));
    }

    [Fact]
    public async Task Help_names_every_command_and_an_unknown_one_is_refused()
    {
        var help = await RunAsync("", "help");
        Assert.Equal(0, help.Code);
        Assert.All(["render", "passphrase", "public-address", "health", "PatternShop__DataFolder"], word => Assert.Contains(word, help.Output, StringComparison.Ordinal));
        var unknown = await RunAsync("", "publish");
        Assert.Equal(2, unknown.Code);
        Assert.StartsWith("There is no command \"publish\"", unknown.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_server_with_a_setting_that_does_not_do_says_so_and_does_not_start()
    {
        var done = await RunAsync("", "--PatternShop:KnownProxies=everyone");
        Assert.Equal(2, done.Code);
        Assert.Contains("everyone", done.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_server_whose_data_folder_cannot_be_used_says_so_and_does_not_start()
    {
        using var folder = new Folder();
        var file = Path.Combine(folder.Path, "data");
        await File.WriteAllTextAsync(file, "not a folder", TestContext.Current.CancellationToken);
        var done = await RunAsync("", "--PatternShop:DataFolder=" + file, "--urls=http://127.0.0.1:0", "--Logging:Console:LogLevel:Default=None");
        Assert.Equal(1, done.Code);
        Assert.StartsWith(file, done.Errors, StringComparison.Ordinal);
    }

    /// <summary>A text that goes on for ever; whoever reads much more than a passphrase of it is stopped.</summary>
    private sealed class EndlessText : TextReader
    {
        private int _read;

        public override int Peek() => 'x';

        public override int Read() => ++_read < 10_000 ? 'x' : throw new IOException("So much of a passphrase was read.");
    }

    private static async Task<(int Code, string Output, string Errors)> RunAsync(string input, params string[] args)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var errors = new StringWriter { NewLine = "\n" };
        var code = await CommandLine.RunAsync(args, new StringReader(input), output, errors);
        return (code, output.ToString(), errors.ToString());
    }
}
