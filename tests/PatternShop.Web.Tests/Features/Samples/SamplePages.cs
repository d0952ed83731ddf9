using PatternShop.Tests.Shared;

namespace PatternShop.Web.Tests;

/// <summary>The samples as they stand in the checkout, found without the product.</summary>
internal static class SamplePages
{
    public static string Folder { get; } = Checkout.Path("tests/Shared/Samples");

    public static IReadOnlyList<string> Names { get; } =
        [.. Directory.EnumerateFiles(Folder, "*.json").Select(file => Path.GetFileNameWithoutExtension(file)).Order(StringComparer.Ordinal)];

    public static string File(string name) => Path.Combine(Folder, name + ".json");
}
