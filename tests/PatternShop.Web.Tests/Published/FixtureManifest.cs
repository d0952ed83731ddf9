using System.IO.Compression;
using System.Text.Json;
using PatternShop.Tests.Shared;

namespace PatternShop.Web.Tests;

/// <summary>What an earlier program left behind and answered; tests/Shared/DataFolders/4b28124/README.md explains every member.</summary>
internal sealed record FixtureManifest(DateTimeOffset At, string PublicAddress, IReadOnlyList<FixtureMaker> Makers, IReadOnlyList<FixtureAddress> Addresses)
{
    private const string Folder = "tests/Shared/DataFolders/4b28124/";
    private const string DataPrefix = "data/";
    private static readonly Lazy<FixtureManifest> Read = new(static () =>
        JsonSerializer.Deserialize<FixtureManifest>(File.ReadAllBytes(Checkout.Path(Folder + "manifest.json")), JsonSerializerOptions.Web)!);

    public static FixtureManifest Current => Read.Value;

    /// <summary>Every pattern with its maker, those that are not deleted.</summary>
    public IEnumerable<(FixtureMaker Maker, FixturePattern Pattern)> Patterns => Makers.SelectMany(maker => maker.Patterns.Select(pattern => (maker, pattern)));

    /// <summary>Copies the data folder to a place of the test's own.</summary>
    public static async Task UnpackAsync(string folder)
    {
        using var archive = Open();
        foreach (var entry in archive.Entries.Where(entry => entry.FullName.StartsWith(DataPrefix, StringComparison.Ordinal) && entry.Name.Length > 0))
        {
            var file = Path.Combine(folder, entry.FullName[DataPrefix.Length..]);
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            await entry.ExtractToFileAsync(file);
        }
    }

    /// <summary>Returns a pattern's document as the earlier program let its maker download it.</summary>
    public static async Task<byte[]> DocumentAsync(string pattern)
    {
        using var archive = Open();
        using var bytes = new MemoryStream();
        await using var entry = await archive.GetEntry($"documents/{pattern}.json")!.OpenAsync();
        await entry.CopyToAsync(bytes);
        return bytes.ToArray();
    }

    private static ZipArchive Open() => ZipFile.OpenRead(Checkout.Path(Folder + "data.zip"));
}

internal sealed record FixtureMaker(
    string Email, string Passphrase, string Studio, string Cookie, IReadOnlyList<FixtureDeleted> Deleted, IReadOnlyList<FixturePattern> Patterns);

internal sealed record FixtureDeleted(string Id, string Title);

internal sealed record FixturePattern(
    string Id,
    string Title,
    long Revision,
    string? Undo,
    string? Redo,
    bool UnpublishedChanges,
    bool Withdrawn,
    bool Previewed,
    IReadOnlyList<string> Photos,
    IReadOnlyList<FixtureVersion> Versions,
    IReadOnlyList<FixtureReport> Reports);

internal sealed record FixtureVersion(int Number, DateOnly Date, bool Correction, string Note, string Hash, string Code, string Facts);

internal sealed record FixtureReport(int Number, int? Row, string Text, string ReplyTo, string? Answer, string Secret);

/// <param name="Maker">The index of the maker whose session it needs; null for everybody.</param>
internal sealed record FixtureAddress(string Path, int? Maker, int Status, string? Location, string? Type, string? Sha256, long? Length);
