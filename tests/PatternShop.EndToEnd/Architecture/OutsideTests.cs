using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>These tests see the product as a reader does: through its pages and files, never through its code.</summary>
public sealed class OutsideTests
{
    [Fact]
    public void No_assembly_of_the_product_stands_beside_these_tests() => Assert.Empty(Product(AppContext.BaseDirectory));

    [Fact]
    public void An_assembly_of_the_product_would_be_seen()
    {
        var folder = Directory.CreateTempSubdirectory();
        try
        {
            File.WriteAllText(Path.Combine(folder.FullName, "PatternShop.Weave.dll"), "");
            Assert.Equal(["PatternShop.Weave.dll"], Product(folder.FullName));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static List<string?> Product(string folder) =>
    [
        .. Directory.EnumerateFiles(folder, "PatternShop.*.dll").Select(Path.GetFileName).Where(name => name != "PatternShop.EndToEnd.dll"),
    ];
}
