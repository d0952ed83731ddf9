using System.Text;

namespace PatternShop.Weave;

/// <summary>Makes the motif's grid from its rows of text.</summary>
internal sealed class MotifBinder(FileProblems problems)
{
    private static readonly BitGrid Neutral = BitGrid.Create(1, 1, (_, _) => false);

    /// <summary>The grid, or a neutral one; its rows and ends, each null where it could not be told.</summary>
    public (BitGrid Motif, int? Rows, int? Ends) Bind(MemberReader document)
    {
        if (document.Array("motif", required: true) is not { } json)
        {
            return (Neutral, null, null);
        }

        if (json.Items.Count == 0)
        {
            problems.Add(ProblemCodes.MotifEmpty, json.Place, "The motif has no rows.", "Draw at least one row.");
            return (Neutral, null, null);
        }

        var rows = new List<string>(json.Items.Count);
        var good = true;
        for (var i = 0; i < json.Items.Count; i++)
        {
            var row = document.Typed<JsonText>(json.Items[i], $"row {Plain.Number(i + 1)} of the motif", "a text in quotation marks")?.Value;
            good &= row is not null && Check(row, i, json.Items[i].Place, rows.FirstOrDefault());
            rows.AddRange(row is null ? [] : [row]);
        }

        return Grid(rows, json.Items.Count, good);
    }

    private static (BitGrid Motif, int? Rows, int? Ends) Grid(List<string> rows, int count, bool good)
    {
        var ends = rows.Count == 0 || rows.Any(row => row.Length != rows[0].Length) ? null : (int?)rows[0].Length;
        var small = count <= Bounds.MotifRows && ends <= Bounds.MotifEnds;
        return (good && small ? GridText.Read(rows) : Neutral, count, ends);
    }

    private bool Check(string row, int index, JsonPlace place, string? first)
    {
        var label = $"Row {Plain.Number(index + 1)} of the motif";
        if (row.Length == 0)
        {
            problems.Add(ProblemCodes.MotifEmpty, place, $"{label} has no cells.", "Draw at least one cell, or remove the row.");
            return false;
        }

        var sameLength = first is null || first.Length == row.Length;
        if (!sameLength)
        {
            problems.Add(
                ProblemCodes.MotifRowLength,
                place,
                $"{label} has {Plain.Count(row.Length, "cell")}, row 1 has {Plain.Number(first!.Length)}.",
                "Give every row the same number of cells.");
        }

        return Cells(row, label, place) && sameLength;
    }

    private bool Cells(string row, string label, JsonPlace place)
    {
        var bad = row.AsSpan().IndexOfAnyExcept(GridText.Over, GridText.Under);
        if (bad >= 0)
        {
            problems.Add(
                ProblemCodes.MotifCell,
                place,
                $"Cell {Plain.Number(bad + 1)} of {char.ToLowerInvariant(label[0])}{label[1..]} is {Plain.Quote(First(row.AsSpan(bad)))}.",
                "Write x where the weft is over and . where it is under.");
        }

        return bad < 0;
    }

    private static string First(ReadOnlySpan<char> text)
    {
        _ = Rune.DecodeFromUtf16(text, out var rune, out _);
        return rune.ToString();
    }
}
