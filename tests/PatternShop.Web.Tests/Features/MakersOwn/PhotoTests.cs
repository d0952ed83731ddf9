using System.Globalization;
using System.Net;
using AngleSharp.Html.Dom;
using Microsoft.Extensions.DependencyInjection;
using PatternShop.Print;
using PatternShop.Store;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using SkiaSharp;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>Photos from the maker's form to the reader's page.</summary>
public sealed class PhotoTests(SharedShop shared) : IClassFixture<SharedShop>
{
    private static readonly PatternDocument Cloth = Charts.DiamondPiece with { Title = "Hazel", Language = "de" };

    private static readonly byte[] Sample = Jpeg(900, 600);

    [Fact]
    public async Task Nobody_but_the_maker_sees_a_photo_until_a_version_shows_it_and_withdrawing_hides_it()
    {
        await using var shop = await IssuedShop.OpenAsync(Cloth);
        var path = $"/studio/patterns/{shop.Id}/photos";
        Assert.Equal((HttpStatusCode.SeeOther, path), Sent(await UploadAsync(shop.Maker, path, Sample, ("Caption", "The woven “sample”"), ("Row", ""))));
        var studio = (await shop.Maker.GetAsync(path)).Html;
        Assert.Empty(PageRules.Faults(studio));
        var image = (IHtmlImageElement)studio.QuerySelector("ul.photo-list img")!;
        Assert.Equal(("The woven “sample”", "400", "267"), (image.AlternativeText, image.GetAttribute("width"), image.GetAttribute("height")));
        var mine = image.GetAttribute("src")!;
        var (small, large) = (HashOf(mine), HashOf(studio.QuerySelector("ul.photo-list a")!.GetAttribute("href")!));
        var kept = await shop.Maker.GetAsync(mine);
        Assert.Equal((HttpStatusCode.OK, "image/jpeg", "max-age=86400, private, immutable"), (kept.Status, kept.Headers["Content-Type"], kept.Headers["Cache-Control"]));
        using (var other = await shop.Shop.SecondMakerAsync())
        {
            Assert.Equal(HttpStatusCode.NotFound, (await other.GetAsync(mine)).Status);
            Assert.Equal(HttpStatusCode.NotFound, (await UploadAsync(other, path, Sample, "/studio/new", ("Caption", "Mine"))).Status);
        }

        Assert.Equal(HttpStatusCode.Redirect, (await shop.Reader.GetAsync(mine)).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await shop.Reader.GetAsync($"/files/{small}/photo.jpg")).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await shop.Reader.GetAsync($"/files/{large}/photo.jpg")).Status);

        await TestShop.IssueAsync(shop.Maker, shop.Id);
        var page = await shop.Reader.GetAsync(shop.Page);
        Assert.Empty(PageRules.Faults(page.Html));
        var figure = page.Html.QuerySelector("section.maker figure")!;
        var shown = figure.QuerySelector("a > img")!;
        Assert.Equal($"/files/{small}/photo.jpg", shown.GetAttribute("src"));
        Assert.Equal($"/files/{large}/photo.jpg", figure.QuerySelector("a")!.GetAttribute("href"));
        Assert.Equal(
            ("The woven “sample”", "400", "267", "lazy", "de"),
            (shown.GetAttribute("alt"), shown.GetAttribute("width"), shown.GetAttribute("height"), shown.GetAttribute("loading"), shown.GetAttribute("lang")));
        Assert.Equal("The woven “sample”", figure.QuerySelector("figcaption")!.TextContent);
        Assert.Equal("In the maker's own words and pictures", page.Html.QuerySelector("section.maker h2")!.TextContent);
        foreach (var hash in new[] { small, large })
        {
            var file = await shop.Reader.GetAsync($"/files/{hash}/photo.jpg");
            Assert.Equal((HttpStatusCode.OK, "image/jpeg", "public, max-age=31536000, immutable"), (file.Status, file.Headers["Content-Type"], file.Headers["Cache-Control"]));
            Assert.Equal(hash, PatternWriter.Hash(file.Body));
            Assert.False(file.Headers.ContainsKey("Content-Disposition"));
            Assert.Equal(PhotoEndpoints.Policy.Policy, file.Headers["Content-Security-Policy"]);
        }

        // whatever comes compressed only makes it less
        Assert.InRange((await shop.Reader.GetAsync($"/files/{small}/photo.jpg")).Body.Length + page.Body.Length, 1, 100_000);
        Assert.DoesNotContain("photo", string.Join(' ', page.Html.QuerySelectorAll("ul.files a").Select(link => link.TextContent + link.GetAttribute("href"))), StringComparison.OrdinalIgnoreCase);
        Assert.Contains(page.Html.QuerySelectorAll("ul.changes h3, ul.changes li"), item => item.TextContent.Contains("Maker's photos", StringComparison.Ordinal));

        await shop.Maker.PostAsync("/studio", $"/studio/patterns/{shop.Id}/withdraw");
        Assert.Equal(HttpStatusCode.NotFound, (await shop.Reader.GetAsync($"/files/{large}/photo.jpg")).Status);
        await shop.Maker.PostAsync("/studio", $"/studio/patterns/{shop.Id}/restore");
        Assert.Equal(HttpStatusCode.OK, (await shop.Reader.GetAsync($"/files/{large}/photo.jpg")).Status);
    }

    [Fact]
    public async Task A_preview_shows_photos_at_private_addresses_until_it_ends()
    {
        await using var shop = await IssuedShop.OpenAsync(Cloth);
        var path = $"/studio/patterns/{shop.Id}/photos";
        await UploadAsync(shop.Maker, path, Sample, ("Caption", "Edge"), ("Row", "3"));
        var secret = (await shop.Shop.Services.GetRequiredService<PreviewDesk>().BeginAsync((await shop.Shop.MakerAsync()).Id, shop.Id))!;
        var page = (await shop.Reader.GetAsync($"/preview/{secret}")).Html;
        var rows = page.QuerySelectorAll("table.rows tr").Where(row => row.QuerySelector("figure") is not null).Select(row => row.Id).ToList();
        Assert.Contains("row-3", rows);
        Assert.DoesNotContain("row-2", rows);
        var source = page.QuerySelector("#row-3 img")!.GetAttribute("src")!;
        Assert.StartsWith($"/preview/{secret}/photos/", source, StringComparison.Ordinal);
        var file = await shop.Reader.GetAsync(source);
        Assert.Equal((HttpStatusCode.OK, "no-store", "noindex"), (file.Status, file.Headers["Cache-Control"], file.Headers["X-Robots-Tag"]));
        Assert.Equal(HttpStatusCode.NotFound, (await shop.Reader.GetAsync(source.Replace(secret, "0000", StringComparison.Ordinal))).Status);
        await shop.Shop.Services.GetRequiredService<PreviewDesk>().EndAsync((await shop.Shop.MakerAsync()).Id, shop.Id);
        Assert.Equal(HttpStatusCode.NotFound, (await shop.Reader.GetAsync(source)).Status);
    }

    [Theory]
    [InlineData("text", "The file is not a picture that can be read here.")]
    [InlineData("half", "The picture is damaged, or its end is missing.")]
    [InlineData("none", "No picture came with it.")]
    [InlineData("too long", "The file has more than 16 MB.")]
    public async Task What_is_no_good_picture_is_said_and_the_words_stay(string kind, string what)
    {
        var shop = await shared.OfAsync(static () => IssuedShop.OpenAsync(Cloth));
        var path = $"/studio/patterns/{shop.Id}/photos";
        byte[] file = kind switch { "text" => "<script>alert(1)</script>"u8.ToArray(), "half" => Sample[..(Sample.Length / 2)], "too long" => new byte[PhotoMaker.MostBytes + 1], _ => [] };
        var answer = await UploadAsync(shop.Maker, path, file, ("Caption", "My <sample>"), ("Row", "2"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.Status);
        Assert.StartsWith(what, answer.Html.QuerySelector("#field-file-wrong")!.TextContent.Trim(), StringComparison.Ordinal);
        Assert.Equal(("My <sample>", "2"), (answer.Html.QuerySelector("#field-caption")!.GetAttribute("value"), answer.Html.QuerySelector("#field-row")!.GetAttribute("value")));
        Assert.Empty(PageRules.Faults(answer.Html));
        Assert.Empty((await OpenAsync(shop)).Document.Photos);
    }

    [Fact]
    public async Task A_good_picture_whose_words_are_not_right_need_not_be_sent_again()
    {
        await using var shop = await IssuedShop.OpenAsync(Cloth);
        var path = $"/studio/patterns/{shop.Id}/photos";
        var answer = await UploadAsync(shop.Maker, path, Sample, ("Caption", " "), ("Row", "99"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.Status);
        Assert.Equal("The caption is empty. Write at least one letter.", answer.Html.QuerySelector("#field-caption-wrong")!.TextContent.Trim());
        Assert.StartsWith("There is no row 99: the motif has 10 rows.", answer.Html.QuerySelector("#field-row-wrong")!.TextContent.Trim(), StringComparison.Ordinal);
        var hash = answer.Html.QuerySelector($"form[action='{path}'] input[name=Hash]")!.GetAttribute("value")!;
        Assert.Equal((HttpStatusCode.SeeOther, path), Sent(await UploadAsync(shop.Maker, path, [], ("Hash", hash), ("Caption", "Sample"), ("Row", "10"))));
        Assert.Equal([new Photo(hash, "Sample", 10)], (await OpenAsync(shop)).Document.Photos);
    }

    [Fact]
    public async Task Words_that_are_refused_stay_in_the_form_in_which_they_were_typed()
    {
        await using var shop = await IssuedShop.OpenAsync(Cloth);
        var path = $"/studio/patterns/{shop.Id}/photos";
        await UploadAsync(shop.Maker, path, Sample, ("Caption", "One"), ("Row", ""));
        var again = await UploadAsync(shop.Maker, path, Sample, ("Caption", "Another"), ("Row", "2"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, again.Status);
        Assert.Equal(("One", ""), Typed(again, "photo-1"));
        Assert.Equal(("Another", "2"), Typed(again, "field"));
        Assert.NotNull(again.Html.QuerySelector("#field-file-wrong"));
        Assert.Equal("#field-file", Assert.Single(again.Html.QuerySelectorAll(".wrong-box a")).GetAttribute("href"));
        Assert.Empty(again.Html.QuerySelectorAll(".photo-list [aria-invalid], .photo-list .wrong"));
        Assert.Null(again.Html.QuerySelector($"form[action='{path}'] input[name=Hash]"));
        Assert.Empty(PageRules.Faults(again.Html));
        var one = Assert.Single((await OpenAsync(shop)).Document.Photos);
        Assert.Equal("One", one.Caption);

        var changed = await shop.Maker.PostAsync(path, path + "/change", ("Hash", one.Hash), ("Caption", "First"), ("Row", "four"));
        Assert.Equal(("First", "four"), Typed(changed, "photo-1"));
        Assert.Equal(("", ""), Typed(changed, "field"));
        Assert.Equal("#photo-1-row", Assert.Single(changed.Html.QuerySelectorAll(".wrong-box a")).GetAttribute("href"));
        Assert.Empty(PageRules.Faults(changed.Html));
    }

    [Fact]
    public async Task A_caption_that_turns_words_around_is_refused_and_words_that_were_kept_before_are_not_asked()
    {
        await using var shop = await IssuedShop.OpenAsync(Cloth with { Title = "Harbour \u202Esthgil" });
        var path = $"/studio/patterns/{shop.Id}/photos";
        var answer = await UploadAsync(shop.Maker, path, Sample, ("Caption", "The \u202Eegde"), ("Row", ""));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.Status);
        Assert.Equal(
            "Character 5 of the caption is U+202E, which can't be seen and changes the direction of the words after it. Remove it: delete the words around it and type them again.",
            answer.Html.QuerySelector("#field-caption-wrong")!.TextContent.Trim());
        Assert.Equal((HttpStatusCode.SeeOther, path), Sent(await UploadAsync(shop.Maker, path, Sample, ("Caption", "The edge"), ("Row", ""))));
        Assert.Equal("The edge", Assert.Single((await OpenAsync(shop)).Document.Photos).Caption);
    }

    [Fact]
    public async Task Words_change_order_changes_and_photos_go_and_undo_brings_them_back()
    {
        await using var shop = await IssuedShop.OpenAsync(Cloth);
        var path = $"/studio/patterns/{shop.Id}/photos";
        await UploadAsync(shop.Maker, path, Sample, ("Caption", "One"), ("Row", ""));
        await UploadAsync(shop.Maker, path, Jpeg(300, 300), ("Caption", "Two"), ("Row", ""));
        var (one, two) = ((await OpenAsync(shop)).Document.Photos[0], (await OpenAsync(shop)).Document.Photos[1]);
        var maker = await shop.Shop.MakerAsync();
        var heard = 0;
        using var seat = (await shop.Shop.Services.GetRequiredService<OpenPatterns>().JoinAsync(maker.Id, maker.Stamp, shop.Id, () => Interlocked.Increment(ref heard)))!;
        await shop.Maker.PostAsync(path, path + "/change", ("Hash", two.Hash), ("act", "earlier"));
        Assert.Equal([two, one], seat.View.Document.Photos);
        await shop.Maker.PostAsync(path, path + "/change", ("Hash", one.Hash), ("Caption", "First"), ("Row", "4"));
        Assert.Equal([two, one with { Caption = "First", Row = 4 }], seat.View.Document.Photos);
        var wrong = await shop.Maker.PostAsync(path, path + "/change", ("Hash", one.Hash), ("Caption", "First"), ("Row", "four"));
        Assert.Equal((HttpStatusCode.UnprocessableEntity, "four"), (wrong.Status, wrong.Html.QuerySelector("#photo-2-row")!.GetAttribute("value")));
        await shop.Maker.PostAsync(path, path + "/change", ("Hash", two.Hash), ("act", "remove"));
        Assert.Equal([one with { Caption = "First", Row = 4 }], seat.View.Document.Photos);
        Assert.Equal(3, heard);
        await seat.UndoAsync("window", 1);
        Assert.Equal(2, seat.View.Document.Photos.Count);
        Assert.Equal(HttpStatusCode.OK, (await shop.Maker.GetAsync($"{path}/{two.Hash}.jpg")).Status);
    }

    private static (string Caption, string Row) Typed(Reply page, string form) => (
        page.Html.QuerySelector($"#{form}-caption")!.GetAttribute("value") ?? "",
        page.Html.QuerySelector($"#{form}-row")!.GetAttribute("value") ?? "");

    private static (HttpStatusCode, string?) Sent(Reply reply) => (reply.Status, reply.Location);

    private static string HashOf(string address) => Path.GetFileNameWithoutExtension(address);

    private static async Task<OpenPattern> OpenAsync(IssuedShop shop) => (await shop.Shop.Workroom.OpenAsync((await shop.Shop.MakerAsync()).Id, shop.Id))!;

    private static Task<Reply> UploadAsync(Visitor maker, string path, byte[] file, params (string Name, string Value)[] fields) =>
        UploadAsync(maker, path, file, path, fields);

    private static async Task<Reply> UploadAsync(Visitor maker, string path, byte[] file, string page, params (string Name, string Value)[] fields)
    {
        using var content = new MultipartFormDataContent();
        foreach (var (name, value) in fields.Append(("__RequestVerificationToken", await maker.TokenAsync(page))))
        {
            content.Add(new StringContent(value), name);
        }

        content.Add(new ByteArrayContent(file), "File", "IMG_0001.jpg");
        return await maker.SendAsync(HttpMethod.Post, path, content);
    }

    private static byte[] Jpeg(int width, int height)
    {
        using var bitmap = new SKBitmap(width, height);
        using var canvas = new SKCanvas(bitmap);
        using var paint = new SKPaint { Color = SKColors.SaddleBrown };
        canvas.Clear(SKColors.Linen);
        for (var x = 0; x < width; x += 24)
        {
            canvas.DrawRect(x, 0, 12, height - (x / 3), paint);
        }

        using var data = bitmap.Encode(SKEncodedImageFormat.Jpeg, 90) ?? throw new InvalidOperationException(width.ToString(CultureInfo.InvariantCulture));
        return data.ToArray();
    }
}
