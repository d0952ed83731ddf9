using System.Net;
using Microsoft.Extensions.DependencyInjection;
using PatternShop.Store;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using UglyToad.PdfPig;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class CopyTests
{
    private static readonly PatternDocument Cloth = Charts.Document(Charts.TenEndDiamond) with { Title = "Harbour lights" };

    [Fact]
    public async Task The_code_on_the_sheets_leads_to_the_newest_or_to_what_to_change()
    {
        await using var shop = await IssuedShop.OpenAsync(Cloth, "--PatternShop:PublicAddress=https://weave.example.org");
        var shelf = shop.Shop.Services.GetRequiredService<PublicShelf>();
        var version = (await shelf.VersionAsync(shop.Id, 1, TestContext.Current.CancellationToken))!;
        var code = version.Code!;
        foreach (var file in version.Files.Where(file => file.MediaType == "application/pdf"))
        {
            using var pdf = PdfDocument.Open((await shelf.FileAsync(file.Hash, TestContext.Current.CancellationToken))!.Bytes);
            // in large print the address does not fit the line: the QR code beside it says it
            var said = file.Edition.Contains("large", StringComparison.Ordinal) ? $"Copy {code.Spaced}" : $"Copy {code.Spaced} · is it the newest? https://weave.example.org/c/{code.Value}";
            Assert.All(pdf.GetPages(), page => Assert.Contains(said, string.Join(' ', page.GetWords().Select(word => word.Text)), StringComparison.Ordinal));
        }

        Assert.Equal("This is the newest", (await shop.Reader.GetAsync("/c/" + code.Value)).Heading);
        Assert.Equal("/c/" + code.Value, (await shop.Reader.GetAsync("/c/" + code.Spaced.ToLowerInvariant())).Location);
        Assert.Equal("/c/" + code.Value, (await shop.Reader.GetAsync("/c?code=" + code.Spaced.ToLowerInvariant())).Location);
        await shop.ReissueAsync(Cloth with { Motif = Cloth.Motif.With(3, 0, !Cloth.Motif[3, 0]) }, "");
        var old = await shop.Reader.GetAsync("/c/" + code.Value);
        Assert.Equal("There is a newer one", old.Heading);
        Assert.Contains("a correction. Its rows differ from those of the sheet.", old.Words, StringComparison.Ordinal);
        Assert.Contains("Row 4", old.Html.QuerySelectorAll("ul.changes h3").Select(heading => heading.TextContent), StringComparer.Ordinal);
        await shop.Maker.PostAsync("/studio", $"/studio/patterns/{shop.Id}/withdraw");
        Assert.Equal(HttpStatusCode.Gone, (await shop.Reader.GetAsync("/c/" + code.Value)).Status);
    }

    [Theory]
    [InlineData("/c", HttpStatusCode.OK)]
    [InlineData("/c?code=", HttpStatusCode.OK)]
    [InlineData("/c?code=abc", HttpStatusCode.UnprocessableEntity)]
    [InlineData("/c?code=<script>", HttpStatusCode.UnprocessableEntity)]
    [InlineData("/c/ABCD1234", HttpStatusCode.NotFound)]
    [InlineData("/c/%3Cb%3E", HttpStatusCode.NotFound)]
    public async Task A_code_that_is_none_is_asked_for_again(string path, HttpStatusCode status)
    {
        await using var shop = await TestShop.OpenAsync();
        using var reader = shop.Visit();
        var answer = await reader.GetAsync(path);
        Assert.Equal((status, "Which copy is this?"), (answer.Status, answer.Heading));
        Assert.NotNull(answer.Html.QuerySelector("form[action='/c'] input[name=code]"));
        Assert.Empty(answer.Html.QuerySelectorAll("main script, main b"));
    }
}
