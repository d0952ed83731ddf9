using System.Text.Json;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using PatternShop.Store;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>
/// What was published stays: the present program opens a data folder that an earlier one made, and everything that readers and makers had is still there.
/// tests/Shared/DataFolders/4b28124/README.md says what the folder holds and how it was made.
/// </summary>
public sealed class PublishedStaysTests(SharedFixtureShop shared) : IClassFixture<SharedFixtureShop>
{
    // what a published row is, whatever words describe it
    private static readonly string[] RowMembers = ["number", "chartRow", "weft", "time", "from", "runs"];

    private static FixtureManifest Manifest => FixtureManifest.Current;

    private static IEnumerable<FixtureAddress> Files => Manifest.Addresses.Where(address => address.Sha256 is not null);

    [Fact]
    public void The_recording_holds_what_it_is_meant_to()
    {
        var versions = Manifest.Patterns.SelectMany(one => one.Pattern.Versions).ToList();
        Assert.Equal((2, 8, 12), (Manifest.Makers.Count, Manifest.Patterns.Count(), versions.Count));
        Assert.True(Files.Count(file => file.Status == 200) > 100, "published files");
        foreach (var begin in new[] { "/c/", "/p/", "/files/", "/preview/", "/reports/", "/studio/patterns/" })
        {
            Assert.Contains(Manifest.Addresses, address => address.Path.StartsWith(begin, StringComparison.Ordinal));
        }

        foreach (var end in new[] { "/weave", "/report", ".json", "/picture.svg", "/cloth.png", "/photo.jpg", "/a4.pdf", ".directions.txt" })
        {
            Assert.Contains(Manifest.Addresses, address => address.Path.EndsWith(end, StringComparison.Ordinal));
        }

        foreach (var status in new[] { 200, 301, 302, 404, 410 })
        {
            Assert.Contains(Manifest.Addresses, address => address.Status == status);
        }

        Assert.Contains(Manifest.Patterns, one => one.Pattern.Withdrawn);
        Assert.Contains(versions, version => version.Correction);
    }

    [Fact]
    public async Task Every_published_file_has_its_bytes_and_every_address_still_answers() =>
        await SameAnswersAsync(await shared.OpenAsync(), Manifest.Addresses);

    [Fact]
    public async Task Every_maker_finds_their_patterns_as_they_left_them()
    {
        var shop = await shared.OpenAsync();
        foreach (var maker in Manifest.Makers)
        {
            var id = await shop.MakerAsync(maker);
            Assert.Equal(
                maker.Patterns.Select(pattern => pattern.Id).Order(StringComparer.Ordinal),
                (await shop.Shop.Workroom.ListAsync(id)).Select(card => card.Id.Value).Order(StringComparer.Ordinal));
            foreach (var pattern in maker.Patterns)
            {
                var open = (await shop.Shop.Workroom.OpenAsync(id, new PatternId(pattern.Id)))!;
                Assert.Equal(await DownloadedAsync(pattern.Id), open.Document);
                Assert.Equal(
                    (pattern.Title, pattern.Revision, pattern.Undo, pattern.Redo, pattern.UnpublishedChanges, pattern.Withdrawn),
                    (open.Document.Title, open.Revision, open.UndoName, open.RedoName, open.HasUnissuedChanges, open.Withdrawn));
                Assert.Equal(
                    pattern.Versions.Select(version => (version.Number, version.Date, version.Correction, version.Note, version.Hash)),
                    open.Versions.OrderBy(version => version.Number).Select(version => (version.Number, version.Date, version.Kind == VersionKind.Correction, version.Note, version.Hash)));
                foreach (var hash in pattern.Photos)
                {
                    Assert.Equal(hash, PatternWriter.Hash((await shop.Shop.Services.GetRequiredService<PhotoDesk>().FindAsync(id, open.Id, hash))!));
                }
            }
        }
    }

    [Fact]
    public async Task Every_version_has_its_document_its_code_and_its_rows()
    {
        var shop = await shared.OpenAsync();
        foreach (var (maker, pattern) in Manifest.Patterns)
        {
            await SameVersionsAsync(shop, maker, pattern);
        }
    }

    [Fact]
    public async Task Reports_answers_and_previews_are_still_there()
    {
        var shop = await shared.OpenAsync();
        var (reports, previews) = (shop.Shop.Services.GetRequiredService<ReportDesk>(), shop.Shop.Services.GetRequiredService<PreviewDesk>());
        foreach (var (maker, pattern) in Manifest.Patterns)
        {
            var (owner, id) = (await shop.MakerAsync(maker), new PatternId(pattern.Id));
            Assert.Equal(pattern.Previewed, await previews.BeganAsync(owner, id) is not null);
            var listed = (await reports.ListAsync(owner, id))!;
            Assert.Equal(pattern.Reports.Count, listed.Count);
            foreach (var report in pattern.Reports)
            {
                var found = (await reports.FindAsync(report.Secret))!;
                Assert.Contains(listed, one => (one.Id, one.Text, one.Answer) == (found.Id, found.Text, found.Answer));
                Assert.Equal(
                    (id, report.Number, report.Row, report.Text, report.ReplyTo, report.Answer),
                    (found.Pattern, found.Number, found.Row, found.Text, found.ReplyTo, found.Answer));
            }
        }
    }

    [Fact]
    public async Task A_session_that_the_earlier_program_signed_still_opens_the_workbench_of_its_maker_alone()
    {
        var shop = await shared.OpenAsync();
        foreach (var (index, maker) in Manifest.Makers.Index())
        {
            var words = (await shop.Visitor(index).GetAsync("/studio")).Words;
            Assert.All(maker.Patterns, pattern => Assert.Contains(pattern.Title, words, StringComparison.Ordinal));
            Assert.All(
                Manifest.Makers[1 - index].Patterns.Where(theirs => maker.Patterns.All(mine => mine.Title != theirs.Title)),
                pattern => Assert.DoesNotContain(pattern.Title, words, StringComparison.Ordinal));
        }
    }

    [Fact]
    public async Task What_was_withdrawn_comes_back_with_its_bytes()
    {
        await using var shop = await FixtureShop.OpenAsync();
        foreach (var (maker, pattern) in Manifest.Patterns.Where(one => one.Pattern.Withdrawn))
        {
            Assert.True(await shop.Shop.Workroom.RestoreAsync(await shop.MakerAsync(maker), new PatternId(pattern.Id)));
            var addresses = Manifest.Addresses.Where(address => address.Status == 410
                || (address.Status == 404 && (address.Sha256 is not null || address.Path.StartsWith($"/p/{pattern.Id}/", StringComparison.Ordinal)))).ToList();
            Assert.True(addresses.Count > 40, "addresses of what was withdrawn");
            // codes are looked up below
            await SameAnswersAsync(shop, addresses.Where(address => !address.Path.StartsWith("/c/", StringComparison.Ordinal)).Select(address => address with { Status = 200 }));
            await SameVersionsAsync(shop, maker, pattern);
        }
    }

    [Fact]
    public async Task What_was_deleted_can_still_be_restored()
    {
        var shop = await shared.OpenAsync();
        foreach (var maker in Manifest.Makers)
        {
            var owner = await shop.MakerAsync(maker);
            Assert.Equal(maker.Deleted.Select(one => (one.Id, one.Title)), (await shop.Shop.Workroom.DeletedAsync(owner)).Select(card => (card.Id.Value, card.Title)));
            foreach (var deleted in maker.Deleted)
            {
                Assert.Equal(await DownloadedAsync(deleted.Id), await shop.Shop.Workroom.DeletedDocumentAsync(owner, new PatternId(deleted.Id)));
            }
        }
    }

    [Fact]
    public async Task Work_goes_on_and_a_new_version_leaves_the_earlier_ones_alone()
    {
        await using var shop = await FixtureShop.OpenAsync();
        var (maker, pattern) = Manifest.Patterns.First(one => one.Pattern is { Redo: not null, Versions.Count: > 0 });
        var (owner, id) = (await shop.MakerAsync(maker), new PatternId(pattern.Id));
        var document = (await shop.Shop.Workroom.OpenAsync(owner, id))!.Document;
        Assert.IsType<SaveResult.Saved>(await shop.Shop.Workroom.RedoAsync(owner, id, "window", 1, pattern.Revision));
        Assert.IsType<SaveResult.Saved>(await shop.Shop.Workroom.UndoAsync(owner, id, "window", 2, pattern.Revision + 1));
        Assert.Equal(document, (await shop.Shop.Workroom.OpenAsync(owner, id))!.Document);

        await TestShop.IssueAsync(shop.Visitor(0), id);
        var versions = (await shop.Shop.Workroom.OpenAsync(owner, id))!.Versions;
        Assert.Equal(pattern.Versions.Count + 1, versions.Count);
        Assert.Equal(pattern.Versions.Select(version => version.Hash), versions.OrderBy(version => version.Number).Take(pattern.Versions.Count).Select(version => version.Hash));
        await SameAnswersAsync(shop, Manifest.Addresses.Where(address => address.Sha256 is not null || address.Path.StartsWith("/c/", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task A_changed_byte_a_lost_file_a_lost_page_and_another_redirect_are_noticed()
    {
        await using var shop = await FixtureShop.OpenAsync();
        var files = Files.Where(file => file.Status == 200).Take(3).ToList();
        await SpoilAsync(shop.Shop.DataFolder, $"UPDATE Files SET Bytes = CAST(X'00' || substr(Bytes, 2) AS BLOB) WHERE Hash = '{files[0].Sha256}'");
        await SpoilAsync(shop.Shop.DataFolder, $"DELETE FROM Files WHERE Hash = '{files[1].Sha256}'");
        var page = Manifest.Addresses.First(address => address is { Status: 200, Type: "text/html; charset=utf-8" } && address.Path.StartsWith("/p/", StringComparison.Ordinal));
        var temporary = Manifest.Addresses.First(address => address.Status == 302);
        var gone = Manifest.Addresses.First(address => address.Status == 410);
        Assert.Equal(
            [
                // wrong bytes are never sent
                $"{files[0].Path}: answered 200, now 500",
                $"{files[1].Path}: answered 200, now 404",
                $"{files[2].Path}: has other bytes",
                $"{page.Path}x/y/z: answered 200, now 404",
                $"{temporary.Path}: redirects with 302",
                $"{gone.Path}: answered 404, now 410",
                $"/healthz: was text/html, now text/plain",
            ],
            await FixtureAnswers.DifferencesAsync(
                shop,
                [.. files[..2], files[2] with { Sha256 = files[0].Sha256 }, page, page with { Path = page.Path + "x/y/z" }, temporary, temporary with { Status = 301 }, gone with { Status = 404 }, page with { Path = "/healthz", Type = "text/html" }]));
    }

    // all of them in the message: a changed route is rarely alone
    private static async Task SameAnswersAsync(FixtureShop shop, IEnumerable<FixtureAddress> addresses)
    {
        var differences = await FixtureAnswers.DifferencesAsync(shop, addresses);
        Assert.True(differences.Count == 0, string.Join('\n', differences));
    }

    private static async Task SameVersionsAsync(FixtureShop shop, FixtureMaker maker, FixturePattern pattern)
    {
        var shelf = shop.Shop.Services.GetRequiredService<PublicShelf>();
        var (owner, id) = (await shop.MakerAsync(maker), new PatternId(pattern.Id));
        var withdrawn = (await shop.Shop.Workroom.OpenAsync(owner, id))!.Withdrawn;
        foreach (var version in pattern.Versions)
        {
            Assert.True(CopyCode.TryParse(version.Code, out var code));
            var copy = (await shelf.CopyAsync(code!))!;
            Assert.Equal((id, version.Number, withdrawn), (copy.Id, copy.Number, copy.Withdrawn));
            var document = (await shop.Shop.Workroom.IssuedAsync(owner, id, version.Number))!;
            var shown = await shelf.VersionAsync(id, version.Number);
            Assert.Equal(withdrawn, shown is null);
            if (shown is not null)
            {
                Assert.Equal((version.Hash, version.Hash), (shown.Hash, PatternWriter.Hash(shown.Canonical)));
                Assert.Equal(Rows((await shop.Visitor(null).GetAsync(version.Facts)).Body), Rows(Facts(document)));
            }
        }
    }

    private static async Task SpoilAsync(string folder, string sql)
    {
        await using var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = Path.Combine(folder, "patternshop.db"), Pooling = false }.ToString());
        await connection.OpenAsync();
        await using var command = connection.CreateCommand();
        command.CommandText = "SELECT 'DROP TRIGGER ' || name || ';' FROM sqlite_schema WHERE type = 'trigger' AND tbl_name = 'Files'";
        var drops = new List<string> { "PRAGMA foreign_keys = OFF;" };
        await using (var reader = await command.ExecuteReaderAsync())
        {
            while (await reader.ReadAsync())
            {
                drops.Add(reader.GetString(0));
            }
        }

        command.CommandText = string.Concat(drops) + sql;
        Assert.Equal(1, await command.ExecuteNonQueryAsync());
    }

    private static async Task<PatternDocument> DownloadedAsync(string pattern) =>
        Assert.IsType<ReadResult.Read>(PatternReader.Read(await FixtureManifest.DocumentAsync(pattern))).Document;

    private static byte[] Facts(PatternDocument document) => System.Text.Encoding.UTF8.GetBytes(PieceFacts.Json(Piece.Of(document), Wording.English));

    private static List<string> Rows(byte[] facts)
    {
        using var json = JsonDocument.Parse(facts);
        return
        [
            .. new[] { "ends", "rows" }.Select(name => $"{name} {json.RootElement.GetProperty(name)}"),
            .. json.RootElement.GetProperty("weavingOrder").EnumerateArray().Select(row => string.Join(' ', RowMembers.Select(name => JsonSerializer.Serialize(row.GetProperty(name))))),
        ];
    }
}
