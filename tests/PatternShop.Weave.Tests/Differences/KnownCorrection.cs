using CsCheck;
using PatternShop.Tests.Shared;

namespace PatternShop.Weave.Tests;

/// <summary>What a maker corrects.</summary>
internal enum CorrectionKind
{
    InsertRow,
    RemoveRow,
    ChangeRow,
    ChangeTimes,
    AddStitch,
    RemoveStitch,
    TurnStart,
}

/// <summary>
/// A document and a correction of it that leaves no doubt which row of the new version stands for which of the old one: no two rows of a motif
/// are alike, and every part of the row plan has a name of its own.
/// </summary>
/// <param name="Kind">What was corrected.</param>
/// <param name="Old">The document before.</param>
/// <param name="New">The document after.</param>
/// <param name="NewOf">For each row of the old weaving order, row 1 first: the number of the same row in the new one; null where it is gone.</param>
internal sealed record KnownCorrection(CorrectionKind Kind, PatternDocument Old, PatternDocument New, IReadOnlyList<int?> NewOf)
{
    private const int Ends = 6;

    public static Gen<KnownCorrection> All { get; } =
        from rows in Gen.Int[2, 6]
        from cells in Gen.Shuffle(Enumerable.Range(1, (1 << Ends) - 2).ToArray())
        from starts in Gen.Bool.Array[1, 3]
        from width in DocumentGen.Widths(Ends)
        from groups in Groups(cells[..rows], starts.Length)
        from kind in Gen.Enum<CorrectionKind>()
        from which in Gen.Int[0, 999]
        from stitch in Stitches(starts.Length)
        let before = new Draft([.. cells.Take(rows)], starts, Named(groups), width)
        let after = Corrected(before, kind, which, cells[rows], stitch)
        where after is not null
        select new KnownCorrection(kind, before.Document(), after.Document(), NewNumbers(before, after));

    /// <summary>A motif row, by the number whose bits are its cells.</summary>
    private sealed record Part(int Name, int? Cells, SimpleStep Step)
    {
        public int Rows => Step switch { PlainRows plain => plain.Count, EdgeStitch => 0, _ => 1 };

        public SimpleStep In(List<int> motif) => Cells is { } cells
            ? ((ChartRows)Step) with { First = motif.IndexOf(cells) + 1, Last = motif.IndexOf(cells) + 1 }
            : Step;
    }

    private sealed record Group(int Times, List<Part> Parts);

    private sealed record Draft(List<int> Motif, bool[] Starts, List<Group> Groups, WidthPlan Width)
    {
        public PatternDocument Document() => Charts.Document("x") with
        {
            Motif = BitGrid.Create(Motif.Count, Ends, (row, end) => ((Motif[row] >> end) & 1) != 0),
            Width = Width,
            Rows = new RowPlan(
                Starts.Select(left => new Weft(left ? Side.Left : Side.Right)).ToSequence(),
                Stroke.Under,
                Groups.SelectMany(group => group.Times == 1
                    ? group.Parts.Select(RowStep (part) => part.In(Motif))
                    : [new Repeat(group.Times, group.Parts.Select(part => part.In(Motif)).ToSequence())]).ToSequence()),
        };

        /// <summary>Names for the rows of the weaving order, in order.</summary>
        public List<(int Group, int Time, int Part, int Row)> Woven() =>
        [
            .. from @group in Groups.Index()
               from time in Enumerable.Range(1, @group.Item.Times)
               from part in @group.Item.Parts
               from row in Enumerable.Range(1, part.Rows)
               select (@group.Index, time, part.Name, row),
        ];

        public Draft WithParts(Func<Part, IEnumerable<Part>> change) =>
            this with { Groups = [.. Groups.Select(group => group with { Parts = [.. group.Parts.SelectMany(change)] })] };

        public Draft WithGroup(int at, Group group) => this with { Groups = [.. Groups.Select((kept, i) => i == at ? group : kept)] };
    }

    private static Gen<EdgeStitch> Stitches(int wefts) =>
        from own in Gen.Int[0, 3]
        from across in Gen.Int[1, 3]
        from left in Gen.Bool
        from weft in Gen.Int[1, wefts]
        select own == 0
            ? new EdgeStitch("hem", StitchYarn.Own, across, left ? Side.Left : Side.Right, 1)
            : new EdgeStitch("twining", StitchYarn.Working, across, Side.Left, weft);

    private static Gen<(int? Cells, SimpleStep Step)> Parts(int[] motif, int wefts) => Gen.Frequency(
        (6, Gen.Select(Gen.OneOf(motif), Gen.Int[1, wefts], (cells, weft) => ((int?)cells, (SimpleStep)new ChartRows(1, 1, weft)))),
        (1, Gen.Select(Gen.Int[1, 3], Gen.Int[1, wefts], (count, weft) => ((int?)null, (SimpleStep)new PlainRows(count, weft)))),
        (3, Stitches(wefts).Select(stitch => ((int?)null, (SimpleStep)stitch))));

    private static Gen<(int Times, (int? Cells, SimpleStep Step)[] Parts)[]> Groups(int[] motif, int wefts) =>
        Gen.Select(Gen.Int[1, 4], Parts(motif, wefts).Array[1, 6])
            .Where(group => group.Item2.Any(part => part.Step is not EdgeStitch))
            .Array[1, 3];

    private static List<Group> Named((int Times, (int? Cells, SimpleStep Step)[] Parts)[] groups)
    {
        var name = 0;
        return [.. groups.Select(group => new Group(group.Times, [.. group.Parts.Select(part => new Part(name++, part.Cells, part.Step))]))];
    }

    // Null where there is nothing to correct so, or where a group would lose all its rows.
    private static Draft? Corrected(Draft before, CorrectionKind kind, int which, int newCells, EdgeStitch stitch)
    {
        var woven = before.Groups.SelectMany(group => group.Parts).Select(part => part.Cells).OfType<int>().Distinct().ToList();
        var repeated = before.Groups.Index().Where(group => group.Item.Times > 1).Select(group => group.Index).ToList();
        var stitches = before.Groups.SelectMany(group => group.Parts).Where(part => part.Step is EdgeStitch).ToList();
        switch (kind)
        {
            case CorrectionKind.InsertRow when woven.Count > 0:
                var upper = woven[which % woven.Count];
                return (before with { Motif = [.. before.Motif.SelectMany(cells => cells == upper ? [newCells, cells] : (int[])[cells])] })
                    .WithParts(part => part.Cells == upper ? [part with { Name = -part.Name - 1, Cells = newCells }, part] : [part]);
            case CorrectionKind.RemoveRow when woven.Count > 0:
                var gone = woven[which % woven.Count];
                var without = (before with { Motif = [.. before.Motif.Where(cells => cells != gone)] }).WithParts(part => part.Cells == gone ? [] : [part]);
                return without.Groups.TrueForAll(group => group.Parts.Exists(part => part.Rows > 0)) ? without : null;
            case CorrectionKind.ChangeRow when woven.Count > 0:
                var old = woven[which % woven.Count];
                return (before with { Motif = [.. before.Motif.Select(cells => cells == old ? newCells : cells)] })
                    .WithParts(part => [part.Cells == old ? part with { Cells = newCells } : part]);
            case CorrectionKind.ChangeTimes when repeated.Count > 0:
                var at = repeated[which % repeated.Count];
                var times = before.Groups[at].Times;
                return before.WithGroup(at, before.Groups[at] with { Times = times == 2 || which % 2 == 0 ? times + 1 : times - 1 });
            case CorrectionKind.AddStitch:
                var group = before.Groups[which % before.Groups.Count];
                var place = which % (group.Parts.Count + 1);
                return before.WithGroup(which % before.Groups.Count, group with { Parts = [.. group.Parts[..place], new Part(-1, null, stitch), .. group.Parts[place..]] });
            case CorrectionKind.RemoveStitch when stitches.Count > 0:
                return before.WithParts(part => part.Name == stitches[which % stitches.Count].Name ? [] : [part]);
            case CorrectionKind.TurnStart:
                return before with { Starts = [.. before.Starts.Select((left, weft) => weft == which % before.Starts.Length ? !left : left)] };
            default:
                return null;
        }
    }

    private static List<int?> NewNumbers(Draft before, Draft after)
    {
        var numbers = after.Woven().Index().ToDictionary(row => row.Item, row => row.Index + 1);
        return [.. before.Woven().Select(row => numbers.TryGetValue(row, out var number) ? number : (int?)null)];
    }
}
