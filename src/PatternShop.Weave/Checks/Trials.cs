namespace PatternShop.Weave;

/// <summary>Tries edits on a piece and says what becomes of its findings.</summary>
internal sealed class Trials(Piece piece, Sequence<Finding> findings)
{
    private readonly Dictionary<PatternDocument, (Piece Piece, Dictionary<(CheckKind Check, int Which), Tally> Tallies)> _tried = [];
    private readonly Dictionary<(CheckKind Check, int Which), Tally> _before = Tally.Of(findings, MovedSteps.None);

    private readonly Lazy<Sequence<Mend>> _edges = new(() => EdgeMends.Edges(piece).ToSequence());

    public Piece Piece => piece;

    /// <summary>Every other way of the floating selvedges, the best first.</summary>
    public Sequence<Mend> Edges => _edges.Value;

    /// <summary>The remedy that the edit is; null when it does not fit, or when as much is left of the finding, or something graver.</summary>
    public Remedy? Try(Mend mend, Finding finding)
    {
        if (mend.Apply(piece.Document) is not EditResult.Done { Document: var document } || document == piece.Document)
        {
            return null;
        }

        if (!_tried.TryGetValue(document, out var after))
        {
            var mended = Piece.Of(document);
            after = (mended, Tally.Of(Checks.Of(mended), MovedSteps.Between(piece.Document.Rows.Steps, document.Rows.Steps)));
            _tried.Add(document, after);
        }

        var before = _before[finding.Name];
        if (after.Tallies.GetValueOrDefault(finding.Name).Count >= before.Count)
        {
            return null;
        }

        var otherwise = RowsOtherwise(after.Piece);
        var left = LeftOf(finding, after.Tallies, otherwise > 0);
        return left.Count < before.Count && left.Weight >= before.Weight
            ? new Remedy(mend, AftermathOf(after.Piece, otherwise, left.Count, after.Tallies, finding))
            : null;
    }

    // What the same check would find elsewhere and does not find now is the same to a reader: it is left, not mended and brought again.
    private Tally LeftOf(Finding finding, Dictionary<(CheckKind Check, int Which), Tally> tallies, bool clothDiffers) => tallies
        .Where(tally => clothDiffers && tally.Key != finding.Name && tally.Key.Check == finding.Check)
        .Select(tally => tally.Value.Beyond(_before.GetValueOrDefault(tally.Key, Tally.Nothing)))
        .Aggregate(tallies.GetValueOrDefault(finding.Name, Tally.Nothing), (sum, more) => sum.With(more));

    // Where the cloth stays as it is, nothing of it is mended or spoilt, whatever is said of its plan.
    private Aftermath AftermathOf(Piece after, int otherwise, int left, Dictionary<(CheckKind Check, int Which), Tally> tallies, Finding finding)
    {
        var brings = otherwise == 0 ? [] : Brought(tallies, finding);
        return new Aftermath(
            left,
            after.Ends,
            after.WidthOnLoom(),
            after.Rows.Count,
            otherwise,
            otherwise == 0 ? [] : AlsoMended(tallies, finding, brings),
            brings);
    }

    private Sequence<CheckKind> AlsoMended(Dictionary<(CheckKind Check, int Which), Tally> tallies, Finding finding, Sequence<Brought> brings) => _before.Keys
        .Where(name => name.Check != finding.Check && !tallies.ContainsKey(name) && !brings.Any(brought => brought.Check == name.Check))
        .Select(name => name.Check)
        .Distinct()
        .Order()
        .ToSequence();

    private Sequence<Brought> Brought(Dictionary<(CheckKind Check, int Which), Tally> tallies, Finding finding) => tallies
        .Where(tally => tally.Key.Check != finding.Check && tally.Value.IsWorseThan(_before.GetValueOrDefault(tally.Key)))
        .Select(tally => new Brought(tally.Key.Check, tally.Value.Weight, Math.Max(0, tally.Value.Count - _before.GetValueOrDefault(tally.Key).Count)))
        .GroupBy(brought => (brought.Weight, brought.Check))
        .Select(all => new Brought(all.Key.Check, all.Key.Weight, all.Sum(brought => brought.More)))
        .OrderBy(brought => brought.Weight)
        .ThenBy(brought => brought.Check)
        .ToSequence();

    private int RowsOtherwise(Piece after)
    {
        if (after.Rows.Count != piece.Rows.Count || after.Ends != piece.Ends)
        {
            return after.Rows.Count;
        }

        var alike = new Dictionary<(int, int), bool>();
        return piece.Rows.Zip(after.Rows).Count(row =>
        {
            var (old, now) = (row.First.Reading, row.Second.Reading);
            if (!alike.TryGetValue((old, now), out var same))
            {
                same = row.First.From == row.Second.From && Travelled.Alike(piece, old, after, now);
                alike.Add((old, now), same);
            }

            return !same;
        });
    }

    /// <summary>Findings of one name, added up.</summary>
    private readonly record struct Tally(Weight Weight, int Count)
    {
        public static Dictionary<(CheckKind Check, int Which), Tally> Of(Sequence<Finding> findings, MovedSteps steps) => findings
            .GroupBy(steps.NameOf)
            .ToDictionary(all => all.Key, all => new Tally(all.Min(finding => finding.Weight), all.Sum(finding => finding.Count)));

        public static Tally Nothing { get; } = new(Weight.Note, 0);

        public bool IsWorseThan(Tally before) => Count > before.Count || Weight < before.Weight;

        /// <summary>What was not there before; all of it where it is graver now.</summary>
        public Tally Beyond(Tally before) =>
            before.Count > 0 && Weight >= before.Weight ? (Count > before.Count ? this with { Count = Count - before.Count } : Nothing) : this;

        public Tally With(Tally more) => new(Weight < more.Weight ? Weight : more.Weight, Count + more.Count);
    }
}
