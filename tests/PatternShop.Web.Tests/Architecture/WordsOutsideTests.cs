using System.Text.RegularExpressions;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>No file knows the machine on which it was made, or where packages come from.</summary>
public sealed partial class WordsOutsideTests
{
    private static readonly HashSet<string> NotText = new(StringComparer.Ordinal) { ".ttf", ".png", ".jpg", ".webp", ".pdf", ".ico", ".woff2", ".zip" };

    [Fact]
    public void No_file_names_a_machine_path_or_a_package_registry()
    {
        var texts = Checkout.Files.Where(file => !NotText.Contains(Path.GetExtension(file))).ToList();
        Assert.Contains("Directory.Packages.props", texts, StringComparer.Ordinal);
        Assert.Contains("tests/run.sh", texts, StringComparer.Ordinal);
        Assert.Empty(texts.SelectMany(file => Faults(file, File.ReadAllLines(Checkout.Path(file)))));
    }

    [Theory]
    [InlineData("/tm", "p/x.json")]
    [InlineData("left in /t", "mp.")]
    [InlineData("see \"/hom", "e/anna/x\"")]
    [InlineData("cd /roo", "t/x")]
    [InlineData("-o=/wor", "k/x")]
    [InlineData("C:\\Use", "rs\\anna")]
    [InlineData("https://api.nu", "get.org/v3")]
    [InlineData("http://deb.deb", "ian.org/x")]
    [InlineData("https://registry.np", "mjs.org/x")]
    public void Each_of_them_is_seen(string begin, string end) =>
        Assert.Equal("f:2", Assert.Single(Faults("f", ["fine", begin + end])));

    [Theory]
    [InlineData("tests/tmp/x, .tools/root/x, https://example.org/home/")]
    [InlineData("/workroom /homes https://github.com/anna/debian-tools")]
    public void Other_words_are_not(string text) => Assert.Empty(Faults("f", [text]));

    private static IEnumerable<string> Faults(string file, IEnumerable<string> lines) =>
        lines.Index().Where(line => Outside().IsMatch(line.Item)).Select(line => $"{file}:{line.Index + 1}");

    [GeneratedRegex("""(^|[^a-z.])/((work|root|home)/|tmp\b)|[A-Za-z]:\\Users\\|https?://[^/\s]*(nuget|npm|debian|pypi)""", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Outside();
}
