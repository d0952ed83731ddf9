using System.Globalization;

namespace PatternShop.Weave;

public partial class Wording
{
    /// <summary>How a stroke begins in the short form: "o" or "u".</summary>
    public virtual string ShortName(Stroke stroke) => stroke == Stroke.Over ? "o" : "u";

    /// <summary>What the letters of the short form stand for.</summary>
    public virtual string ShortLegend => "o = over, u = under";

    /// <summary>A run in short: "u2".</summary>
    public string ShortRun(Run run) => ShortName(run.Stroke) + run.Count.ToString(CultureInfo.InvariantCulture);

    /// <summary>Runs in short: "u1 o1 u2".</summary>
    public string ShortRuns(IEnumerable<Run> runs)
    {
        ArgumentNullException.ThrowIfNull(runs);
        return string.Join(' ', runs.Select(ShortRun));
    }

    /// <summary>A writing in short: "u1 [o1 u2] × 3 o1"; a bracket inside another is round.</summary>
    public string ShortText(Writing writing)
    {
        ArgumentNullException.ThrowIfNull(writing);
        return ShortItems(writing.Items, "[", "]");
    }

    private string ShortItems(IEnumerable<WritingItem> items, string open, string close) => string.Join(' ', items.Select(item => item switch
    {
        RunItem run => ShortRun(run.Run),
        BracketItem bracket => $"{open}{ShortItems(bracket.Items, "(", ")")}{close} {TimesText(bracket)}",
        _ => throw new InvalidOperationException($"No short form for {item.GetType().Name}."),
    }));

    /// <summary>
    /// Reads runs as somebody types them: "u1 o1 u2", "under 1, over 1, under 2". A run without a number is one; neighbours of one
    /// stroke are joined. Null where something else stands there; the empty text is no runs.
    /// </summary>
    public Sequence<Run>? ReadRuns(string? text)
    {
        var runs = new List<Run>();
        var rest = (text ?? "").AsSpan().Trim(Between);
        while (!rest.IsEmpty)
        {
            if (ReadStroke(ref rest) is not { } stroke || ReadCount(ref rest) is not { } count)
            {
                return null;
            }

            rest = rest.TrimStart(Between);
            if (runs.Count > 0 && runs[^1].Stroke == stroke)
            {
                runs[^1] = new Run(stroke, Math.Min(runs[^1].Count + count, Bounds.PieceEnds + 2));
            }
            else
            {
                runs.Add(new Run(stroke, count));
            }
        }

        return runs.ToSequence();
    }

    private const string Between = " \t\r\n,;.";

    private Stroke? ReadStroke(ref ReadOnlySpan<char> rest)
    {
        foreach (var stroke in new[] { Stroke.Over, Stroke.Under })
        {
            foreach (var name in new[] { Name(stroke), ShortName(stroke) })
            {
                if (rest.StartsWith(name, StringComparison.OrdinalIgnoreCase))
                {
                    rest = rest[name.Length..].TrimStart(Between);
                    return stroke;
                }
            }
        }

        return null;
    }

    // No more ends than a piece can have: 1 where no digit stands, null for 0 and for what is too large.
    private static int? ReadCount(ref ReadOnlySpan<char> rest)
    {
        var digits = 0;
        while (digits < rest.Length && char.IsAsciiDigit(rest[digits]))
        {
            digits++;
        }

        if (digits == 0)
        {
            return 1;
        }

        var isCount = int.TryParse(rest[..digits], NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count is > 0 and <= Bounds.PieceEnds + 2;
        rest = rest[digits..];
        return isCount ? count : null;
    }
}
