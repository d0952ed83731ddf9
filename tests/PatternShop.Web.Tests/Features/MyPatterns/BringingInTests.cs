using System.Net;
using System.Text;
using PatternShop.Store;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class BringingInTests
{
    private static readonly PatternDocument Cloth = Charts.Document(Charts.TenEndDiamond, repeats: 2) with { Title = "Quiet <b>cloth</b>" };

    // three things are wrong, on lines 2, 4 and 6
    private const string Broken =
        """
        {
          "format": 1, "titel": "Rain",
          "title": "Rain",
          "motif": ["x.", "x"],
          "gauge": { "sett": { "amount": "4", "unit": "in" }, "rows": { "amount": "4", "unit": "in" } },
          "width": { "repeats": 0 }
        }
        """;

    [Fact]
    public async Task A_kept_file_comes_back_as_the_same_document_and_opens()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var first = await shop.PatternAsync(Cloth);
        var kept = await maker.GetAsync($"/studio/patterns/{first}/document.json");
        var sent = await SendAsync(maker, ("cloth.json", kept.Body));
        Assert.Equal(HttpStatusCode.SeeOther, sent.Status);
        var cards = (await CardsAsync(shop)).Where(one => one.Title == Cloth.Title).ToList();
        Assert.Equal(2, cards.Count);
        Assert.NotEqual($"/studio/patterns/{first}", sent.Location);
        var card = cards.Single(one => $"/studio/patterns/{one.Id}" == sent.Location);
        Assert.Equal(Cloth, await DocumentAsync(shop, card.Id));
        maker.Dispose();
    }

    [Fact]
    public async Task Several_files_come_in_at_once_and_of_those_that_cannot_every_reason_is_told()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var before = (await CardsAsync(shop)).Count;
        var good = PatternWriter.ReadableBytes(Cloth);
        Assert.Equal("/studio", (await SendAsync(maker, ("one.json", good), ("two.json", good))).Location);
        Assert.Equal(before + 2, (await CardsAsync(shop)).Count);

        var mixed = await SendAsync(maker, ("one.json", good), ("C:\\rain\\<b>rain.json", Encoding.UTF8.GetBytes(Broken)), ("note.txt", "no pattern"u8.ToArray()));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, mixed.Status);
        Assert.Equal(before + 3, (await CardsAsync(shop)).Count);
        Assert.Empty(PageRules.Faults(mixed.Html));
        Assert.Equal([Cloth.Title], mixed.Html.QuerySelectorAll("ul.taken > li > a").Select(link => link.TextContent));
        var refused = mixed.Html.QuerySelectorAll("section.wrong-box");
        Assert.Equal(["<b>rain.json", "note.txt"], refused.Select(box => box.QuerySelector("p b")!.TextContent));
        Assert.Equal(["Line 2, column 16:", "Line 4, column 19:", "Line 6, column 25:"], refused[0].QuerySelectorAll("li b").Select(place => place.TextContent.Trim()));
        var problems = Assert.IsType<ReadResult.Refused>(PatternReader.Read(Encoding.UTF8.GetBytes(Broken))).Problems;
        Assert.Equal(problems.Select(problem => $"{problem.What} {problem.Remedy}"), refused[0].QuerySelectorAll("li").Select(line => line.TextContent.Trim()[(line.QuerySelector("b")!.TextContent.Length)..]));
        Assert.Equal("This isn't a PatternShop file. Choose a pattern that was downloaded from PatternShop; its name ends in .json.", Assert.Single(refused[1].QuerySelectorAll("li")).TextContent.Trim());
        maker.Dispose();
    }

    [Fact]
    public async Task What_is_too_large_too_many_or_nothing_is_refused_in_words_and_nothing_is_made()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var before = (await CardsAsync(shop)).Count;
        var none = await SendAsync(maker);
        Assert.Equal((HttpStatusCode.UnprocessableEntity, "No file came with it. Choose one, or drag one onto the box."), (none.Status, none.Html.QuerySelector("#field-files-wrong")!.TextContent.Trim()));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await SendAsync(maker, ("", []))).Status);
        var many = await SendAsync(maker, [.. Enumerable.Range(0, BringingIn.MostFiles + 1).Select(at => ($"{at}.json", PatternWriter.ReadableBytes(Cloth)))]);
        Assert.StartsWith("21 files came; at most 20 are taken at once.", many.Html.QuerySelector("#field-files-wrong")!.TextContent.Trim(), StringComparison.Ordinal);
        var large = await SendAsync(maker, ("large.json", new byte[Bounds.FileBytes + 1]));
        Assert.Equal("The file is larger than 4 MB, the most that a pattern file may be. Choose a pattern file; they are much smaller.", large.Html.QuerySelector("section.wrong-box li")!.TextContent.Trim());
        var empty = await SendAsync(maker, ("empty.json", []));
        Assert.Single(empty.Html.QuerySelectorAll("section.wrong-box li"));
        var flood = await SendAsync(maker, ("flood.json", new byte[BringingIn.MostBytes]), ("drop.json", new byte[1]));
        Assert.Equal("The files have more than 16 MB together. Nothing was made of them. Bring them in one after another.", flood.Html.QuerySelector("#field-files-wrong")!.TextContent.Trim());
        Assert.Equal(before, (await CardsAsync(shop)).Count);
        maker.Dispose();
    }

    [Fact]
    public async Task Words_that_turn_others_around_and_other_encodings_do_not_come_in()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var before = (await CardsAsync(shop)).Count;
        var sent = await SendAsync(
            maker,
            ("turned.json", PatternWriter.ReadableBytes(Cloth with { Title = "Quiet \u202Ehtolc" })),
            ("wide.json", Encoding.Unicode.GetBytes(Encoding.UTF8.GetString(PatternWriter.ReadableBytes(Cloth)))));
        var lines = sent.Html.QuerySelectorAll("section.wrong-box li").Select(line => line.TextContent.Trim()).ToList();
        Assert.Equal(2, lines.Count);
        Assert.EndsWith("Character 7 of the title is U+202E, which can't be seen and changes the direction of the words after it. Remove it: delete the words around it and type them again.", lines[0], StringComparison.Ordinal);
        Assert.Equal("This isn't a PatternShop file: its text is UTF-16. If it is a pattern, open it in a text editor, save it as UTF-8, then read it again.", lines[1]);
        Assert.Equal(before, (await CardsAsync(shop)).Count);
        maker.Dispose();
    }

    [Fact]
    public async Task Photos_that_the_shop_does_not_have_are_named()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var sent = await SendAsync(maker, ("cloth.json", PatternWriter.ReadableBytes(Cloth with { Photos = [new Photo(new string('0', 64), "The <sample>", null)] })));
        Assert.Equal(HttpStatusCode.OK, sent.Status);
        var card = (await CardsAsync(shop)).Single(one => one.Title == Cloth.Title);
        Assert.Contains("this shop does not have: “The <sample>”.", sent.Words, StringComparison.Ordinal);
        Assert.Contains($"/studio/patterns/{card.Id}/photos", sent.Html.QuerySelectorAll("ul.taken a").Select(link => link.GetAttribute("href")), StringComparer.Ordinal);
        Assert.Single((await DocumentAsync(shop, card.Id)).Photos);
        maker.Dispose();
    }

    private static async Task<Reply> SendAsync(Visitor maker, params (string Name, byte[] Bytes)[] files)
    {
        using var content = new MultipartFormDataContent { { new StringContent(await maker.TokenAsync("/studio/bring-in")), "__RequestVerificationToken" } };
        foreach (var (name, bytes) in files)
        {
            var part = new ByteArrayContent(bytes);
            part.Headers.TryAddWithoutValidation("Content-Disposition", $"form-data; name=\"Files\"; filename=\"{name}\"");
            content.Add(part);
        }

        return await maker.SendAsync(HttpMethod.Post, "/studio/bring-in", content);
    }

    private static async Task<IReadOnlyList<PatternCard>> CardsAsync(TestShop shop) =>
        await shop.Workroom.ListAsync((await shop.MakerAsync()).Id, TestContext.Current.CancellationToken);

    private static async Task<PatternDocument> DocumentAsync(TestShop shop, PatternId id) =>
        (await shop.Workroom.OpenAsync((await shop.MakerAsync()).Id, id, TestContext.Current.CancellationToken))!.Document;
}
