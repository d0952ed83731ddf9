using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>A sample that comes with the program.</summary>
public sealed record Sample(string Name, PatternDocument Document, Piece Piece, byte[] Canonical);

/// <summary>The samples that come with the program, read once.</summary>
internal sealed class SampleShelf
{
    private const string Folder = "Samples/";
    private readonly Lazy<IReadOnlyList<Sample>> _all = new(ReadAll);

    public IReadOnlyList<Sample> All => _all.Value;

    public Sample? Find(string name) => All.FirstOrDefault(sample => string.Equals(sample.Name, name, StringComparison.Ordinal));

    private static List<Sample> ReadAll()
    {
        var assembly = typeof(SampleShelf).Assembly;
        return assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith(Folder, StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)
            .Select(name =>
            {
                using var stream = assembly.GetManifestResourceStream(name)!;
                using var memory = new MemoryStream();
                stream.CopyTo(memory);
                var document = PatternReader.Read(memory.ToArray()) is ReadResult.Read read
                    ? read.Document
                    : throw new InvalidOperationException($"The sample {name} does not read.");
                return new Sample(Path.GetFileNameWithoutExtension(name[Folder.Length..]), document, Piece.Of(document), PatternWriter.CanonicalBytes(document));
            })
            .ToList();
    }
}
