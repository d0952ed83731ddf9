using System.Runtime.InteropServices;

namespace PatternShop.Weave;

/// <summary>What a part of a row is.</summary>
public enum PartKind
{
    /// <summary>A floating selvedge.</summary>
    Edge,

    /// <summary>Motifs, from the first pattern end on.</summary>
    Motif,

    /// <summary>Balance ends.</summary>
    Balance,
}

/// <summary>A part of a row that is written by the motif.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Motifs">How many motifs the writing covers once: 1, or 2 where neighbouring motifs read by turns; 0 for edges and balance ends.</param>
/// <param name="Writing">What is woven once, in the direction of travel. It has at most one level of brackets where it is woven several times.</param>
/// <param name="Times">How often, at least 1.</param>
public sealed record MotifPart(PartKind Kind, int Motifs, Writing Writing, int Times);

/// <summary>
/// A row written by the motif: edge · one motif × n · balance ends · edge in the direction of travel, its runs split where each part
/// begins. It is seldom the shortest writing, but shows every reader where the motif begins.
/// </summary>
public sealed record ByMotif(Sequence<MotifPart> Parts)
{
    /// <summary>
    /// The parts of a reading of a piece. Plain rows over a motif of an odd number of ends read by turns: there two motifs are the part
    /// that is repeated, and one more follows where their number is odd.
    /// </summary>
    public static ByMotif Of(Piece piece, Reading reading)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(reading);
        var width = piece.Document.Width;
        var cut = new Cutter(reading.Runs);
        var parts = new List<MotifPart>();
        void Add(PartKind kind, int ends)
        {
            if (ends > 0)
            {
                parts.Add(new MotifPart(kind, 0, ShortestWriting.Of(cut.Next(ends), 0), 1));
            }
        }

        Add(PartKind.Edge, piece.FloatingPerSide);
        if (reading.Key.From == Side.Right)
        {
            Add(PartKind.Balance, width.Balance);
        }

        AddMotifs(parts, Enumerable.Range(0, width.Repeats).Select(_ => cut.Next(piece.Document.Motif.Columns)).ToList());
        if (reading.Key.From == Side.Left)
        {
            Add(PartKind.Balance, width.Balance);
        }

        Add(PartKind.Edge, piece.FloatingPerSide);
        return new ByMotif(parts.ToSequence());
    }

    /// <summary>The runs that the parts stand for, joined where parts meet.</summary>
    public Sequence<Run> WriteOut() =>
        Join(Parts.SelectMany(part => Enumerable.Repeat(part.Writing.WriteOut(), part.Times).SelectMany(runs => runs)));

    private static void AddMotifs(List<MotifPart> parts, List<Sequence<Run>> motifs)
    {
        var turns = motifs.Count > 1 && !motifs[0].Equals(motifs[1]) ? 2 : 1;
        var times = motifs.Count / turns;
        parts.Add(Motifs(motifs.Take(turns), turns, times));
        if (motifs.Count % turns != 0)
        {
            parts.Add(Motifs(motifs.TakeLast(1), 1, 1));
        }
    }

    private static MotifPart Motifs(IEnumerable<Sequence<Run>> motifs, int count, int times) => new(
        PartKind.Motif,
        count,
        ShortestWriting.Of(Join(motifs.SelectMany(runs => runs)), 0, times > 1 ? 1 : ShortestWriting.Levels),
        times);

    private static Sequence<Run> Join(IEnumerable<Run> runs)
    {
        var joined = new List<Run>();
        foreach (var run in runs)
        {
            if (joined.Count > 0 && joined[^1].Stroke == run.Stroke)
            {
                joined[^1] = new Run(run.Stroke, joined[^1].Count + run.Count);
            }
            else
            {
                joined.Add(run);
            }
        }

        return Sequence.Of<Run>(CollectionsMarshal.AsSpan(joined));
    }

    /// <summary>Takes so many ends at a time off the runs of a row.</summary>
    private sealed class Cutter(Sequence<Run> runs)
    {
        private int _run;
        private int _taken;

        public Sequence<Run> Next(int ends)
        {
            var cut = new List<Run>();
            while (ends > 0)
            {
                var run = runs[_run];
                var count = Math.Min(ends, run.Count - _taken);
                cut.Add(new Run(run.Stroke, count));
                ends -= count;
                _taken += count;
                if (_taken == run.Count)
                {
                    (_run, _taken) = (_run + 1, 0);
                }
            }

            return cut.ToSequence();
        }
    }
}
