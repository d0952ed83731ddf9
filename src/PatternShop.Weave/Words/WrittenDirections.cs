using System.Text;

namespace PatternShop.Weave;

/// <summary>The directions of a whole piece as plain text: counts, faults, order of work and every printed row.</summary>
public static class WrittenDirections
{
    /// <summary>The text, lines ended by line feeds, ready for a file.</summary>
    public static string Text(Piece piece, Wording wording)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(wording);
        var text = new StringBuilder();
        void Line(string line = "") => text.Append(line).Append('\n');
        Line(piece.Document.Title);
        Line();
        Line($"{wording.WarpTitle}: {wording.WarpArithmetic(piece)} ({wording.EndsRule(piece)})");
        Line($"{wording.WidthText(piece)}");
        Line($"{wording.LengthText(piece)}");
        foreach (var sentence in new[] { wording.OffsetText(piece), wording.EdgesText(piece), wording.StartText(piece) }.Where(s => s.Length > 0))
        {
            Line(sentence);
        }

        Line();
        var faults = Checks.Of(piece).Where(finding => finding.Weight == Weight.Fault).ToList();
        if (faults.Count > 0)
        {
            faults.ForEach(fault => Line($"{wording.WeightName(fault.Weight)}: {wording.FindingWhat(piece, fault)} {wording.FindingWhy(piece, fault)}"));
            Line();
        }

        Line(wording.ScheduleTitle);
        foreach (var line in Schedule.Of(piece))
        {
            Line($"- {wording.ScheduleText(piece, line)}");
            if (line is RowsAgain { Band.ReadsDifferently: true } again)
            {
                Line($"  {wording.TwoReadingsText(piece, again.Band)}");
            }
        }

        Line();
        Line(wording.RowsTitle);
        foreach (var number in piece.PrintedRows())
        {
            Line(wording.WrittenRow(piece, number));
            foreach (var own in wording.OwnLines(piece.OwnAt(number)))
            {
                Line("  " + own.Replace("\n", "\n    ", StringComparison.Ordinal));
            }
        }

        var whole = piece.Document.Videos.Where(video => video.Row is null).ToList();
        if (piece.Document.Notes.Trim().Length > 0 || whole.Count > 0)
        {
            Line();
            Line(wording.MakersOwnTitle);
            if (piece.Document.Notes.Trim().Length > 0)
            {
                Line(piece.Document.Notes.Trim('\n'));
            }

            whole.ForEach(video => Line($"{wording.VideoMark}: {wording.VideoText(video)}"));
        }

        return text.ToString();
    }
}
