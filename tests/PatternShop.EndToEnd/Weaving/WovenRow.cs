namespace PatternShop.EndToEnd;

/// <summary>A run: neighbouring ends, all over or all under.</summary>
internal readonly record struct Run(bool Over, int Count)
{
    public override string ToString() => FormattableString.Invariant($"{(Over ? "over" : "under")} {Count}");
}

/// <summary>A row as it is woven: its number from 1, where it starts, and its runs in the direction of travel.</summary>
internal sealed record WovenRow(int Number, bool FromLeft, IReadOnlyList<Run> Runs)
{
    /// <summary>Joins strokes in the direction of travel into runs.</summary>
    public static IReadOnlyList<Run> Join(IEnumerable<Run> parts)
    {
        var runs = new List<Run>();
        foreach (var part in parts)
        {
            if (runs.Count > 0 && runs[^1].Over == part.Over)
            {
                runs[^1] = runs[^1] with { Count = runs[^1].Count + part.Count };
            }
            else
            {
                runs.Add(part);
            }
        }

        return runs;
    }
}
