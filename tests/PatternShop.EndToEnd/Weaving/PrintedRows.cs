using System.Globalization;
using System.Text.RegularExpressions;
using UglyToad.PdfPig;

namespace PatternShop.EndToEnd;

/// <summary>Reads the written rows of a printed sheet back, from the letters in the order in which they are painted.</summary>
internal static partial class PrintedRows
{
    /// <summary>The rows with these numbers, which stand on the sheet in this order.</summary>
    public static IReadOnlyList<WrittenRow> Read(byte[] bytes, params IReadOnlyList<int> numbers)
    {
        using var pdf = PdfDocument.Open(bytes);
        var text = string.Concat(pdf.GetPages().SelectMany(page => page.Letters).Select(letter => letter.Value).Where(value => !string.IsNullOrWhiteSpace(value)));
        var places = new List<int>();
        foreach (var number in numbers)
        {
            var place = Start(number).Match(text, places.Count == 0 ? 0 : places[^1] + 1);
            places.Add(place.Success ? place.Index : throw new InvalidOperationException($"Row {number} is not on the sheet: {text}"));
        }

        return [.. numbers.Select((number, at) => Row(number, text[places[at]..(at + 1 < places.Count ? places[at + 1] : text.Length)]))];
    }

    // a row's number, and the side at which it starts
    private static Regex Start(int number) =>
        new(string.Create(CultureInfo.InvariantCulture, $"{number}(left|right)"), RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(1));

    private static WrittenRow Row(int number, string text)
    {
        var fromLeft = text.StartsWith(string.Create(CultureInfo.InvariantCulture, $"{number}left"), StringComparison.Ordinal);
        return new WrittenRow(number, fromLeft ? "from the left →" : "← from the right", Run().Replace(text, "${stroke} ${count}"));
    }

    [GeneratedRegex(@"(?<stroke>over|under)(?<count>\d+)", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Run();
}
