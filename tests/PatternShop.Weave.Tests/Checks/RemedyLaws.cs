using System.Collections.Concurrent;
using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

/// <summary>What is offered was tried: it mends its finding, and brings nothing that it does not name.</summary>
public sealed class RemedyLaws
{
    [Fact]
    public void A_remedy_mends_its_finding_and_says_what_it_brings()
    {
        var kinds = new ConcurrentDictionary<MendKind, int>();
        Cases.SampleFixed(
            document =>
            {
                foreach (var advice in Remedies.Of(Piece.Of(document)))
                {
                    Assert.InRange(advice.Remedies.Count, 0, Remedies.Most);
                    foreach (var remedy in advice.Remedies)
                    {
                        AssertMends(document, advice.Finding, remedy);
                        kinds.AddOrUpdate(remedy.Edit.Kind, 1, (_, count) => count + 1);
                    }
                }
            },
            Effort.Of(400, 20_000));
        Assert.All(Enum.GetValues<MendKind>(), kind => Assert.True(kinds.GetValueOrDefault(kind) > 0, $"no remedy was ever {kind}"));
    }

    [Fact]
    public void A_remedy_that_does_nothing_would_be_seen()
    {
        var twill = Charts.Document("xx../.xx./..xx/x..x", repeats: 2);
        var advice = Remedies.Of(Piece.Of(twill))[0];
        var idle = advice.Remedies[0] with { Edit = new Mend(MendKind.OtherSide, 1, new SetRowPlan(twill.Rows)) };
        Assert.ThrowsAny<Xunit.Sdk.XunitException>(() => AssertMends(twill, advice.Finding, idle));
    }

    [Fact]
    public void Steps_that_only_move_in_the_row_plan_are_neither_mended_nor_brought()
    {
        // the first repeated rows are woven whole or the last of them once: the plan has a step less or more before the second ones, which break and read otherwise as before
        var piece = Piece.Of(Charts.Document(
            Charts.TenEndDiamond,
            repeats: 2,
            balance: 1,
            floating: Charts.AlikeOver,
            steps: [new Repeat(2, [new ChartRows(2, 7, 1)]), new ChartRows(8, 10, 1), new ChartRows(1, 1, 1), new Repeat(2, [new ChartRows(2, 7, 1)]), new ChartRows(8, 8, 1), new Repeat(2, [new ChartRows(1, 3, 1)])]));
        var advice = Remedies.Of(piece).First(one => one.Finding is SeamBreaks);
        Assert.Equal(
            [("Weave the whole motif", "40 rows instead of 35."), ("Weave the last row once, at the end", "34 rows instead of 35. But it brings a caution, repeated rows that read otherwise every other time.")],
            advice.Remedies.Select(remedy => (Wording.English.RemedyName(remedy), Wording.English.AftermathText(piece, advice.Finding, remedy))));
    }

    [Fact]
    public void Findings_are_sorted_equal_by_value_and_bounded() => Law.OfDocuments(Found.LongDocuments, document =>
    {
        var piece = Piece.Of(document);
        var findings = Weave.Checks.Of(piece);
        Assert.Equal(findings, Weave.Checks.Of(Piece.Of(document)));
        Assert.Equal(findings.OrderBy(finding => finding.Weight).ThenBy(finding => finding.Check), findings);
        Assert.InRange(findings.Count, 0, 40);
        Assert.All(findings, finding =>
        {
            Assert.InRange(finding.Areas.Count, 1, Finding.MostAreas);
            Assert.True(finding.Count >= 1);
            Assert.All(finding.Areas, area => Assert.True(IsInside(piece, area), $"{finding} {area}"));
            Assert.InRange(Wording.English.FindingWhat(piece, finding).Length, 10, 250);
            Assert.InRange(Wording.English.FindingWhy(piece, finding).Length, 10, 500);
        });
    }, 500, 20_000);

    private static Gen<PatternDocument> Cases { get; } = Gen.Frequency(
        (3, DocumentGen.Documents),
        (1, DocumentGen.Documents.Select(document => document with { Width = document.Width with { Floating = null } })),
        (1, DocumentGen.Documents.Select(document => document with { Motif = BitGrid.Create(document.Motif.Rows, document.Motif.Columns, (_, _) => false) })),
        (1, Parts),
        (1, Layers));

    // a part of a diamond repeated, which breaks at the seam
    private static Gen<PatternDocument> Parts =>
        from first in Gen.Int[1, 3]
        from last in Gen.Int[7, 11]
        select Charts.Document(Charts.TenEndDiamond + "/x.xx...xx.", repeats: 2, balance: 1, floating: Charts.AlikeUnder, steps: [new Repeat(3, [new ChartRows(first, last, 1)])]);

    private static Gen<PatternDocument> Layers =>
        from size in Gen.Int[2, 3]
        select Charts.Document("x./.x") with
        {
            Motif = BitGrid.Create(2 * size, 2 * size, (row, end) => row % 2 == end % 2 ? (row + end) / 2 % 2 == 0 : row % 2 == 0),
            Rows = new RowPlan([new Weft(Side.Left)], Stroke.Under, [new ChartRows(1, 2 * size, 1)]),
        };

    private static void AssertMends(PatternDocument document, Finding finding, Remedy remedy)
    {
        var after = Piece.Of(Found.After(document, remedy.Edit));
        var before = Count(Weave.Checks.Of(Piece.Of(document)));
        var left = Count(Weave.Checks.Of(after));
        var subject = Found.Subject(finding);
        Assert.True(remedy.Aftermath.Left < before[subject].Count, $"{finding} stands after {remedy.Edit}");
        Assert.Equal((after.Ends, after.Rows.Count), (remedy.Aftermath.Ends, remedy.Aftermath.Rows));
        if (remedy.Aftermath.RowsOtherwise > 0)
        {
            var worse = left.Where(one => one.Key != subject)
                .Where(one => !before.TryGetValue(one.Key, out var old) || old.Weight > one.Value.Weight || old.Count < one.Value.Count)
                .ToList();
            var brought = worse.Where(one => one.Value.Weight == Weight.Fault && one.Key.Check != finding.Check)
                .Select(one => one.Key.Check).Distinct().Order();
            Assert.Equal(brought, remedy.Aftermath.Brings.Where(one => one.Weight == Weight.Fault).Select(one => one.Check).Order());
        }

        // what is the same fault to a reader is never brought, and never both mended and brought
        Assert.DoesNotContain(finding.Check, remedy.Aftermath.Brings.Select(one => one.Check));
        Assert.Empty(remedy.Aftermath.AlsoMends.Intersect(remedy.Aftermath.Brings.Select(one => one.Check)));
        AssertLeft(document, after.Document, finding, remedy);
        var words = Wording.English.AftermathText(Piece.Of(document), finding, remedy);
        Assert.Equal(remedy.Aftermath.Brings.Count > 0, words.Contains("But it brings", StringComparison.Ordinal));
        Assert.DoesNotContain(Wording.English.CheckName(finding.Check), words, StringComparison.Ordinal);
        Assert.NotEmpty(Wording.English.EditName(remedy.Edit));
    }

    // What is left of a finding, with what the same check finds elsewhere and did not find before, or less grave.
    private static void AssertLeft(PatternDocument document, PatternDocument mended, Finding finding, Remedy remedy)
    {
        var (before, left) = (Count(Weave.Checks.Of(Piece.Of(document))), Count(Weave.Checks.Of(Piece.Of(mended))));
        var subject = Found.Subject(finding);
        var here = left.GetValueOrDefault(subject).Count;
        var same = left.Where(one => one.Key.Check == finding.Check && one.Key != subject).ToList();
        if (remedy.Aftermath.RowsOtherwise > 0 && finding is SeamBreaks or TimesUnlike && mended.Rows.Steps.Count != document.Rows.Steps.Count)
        {
            Assert.InRange(remedy.Aftermath.Left, here, here + same.Sum(one => one.Value.Count)); // other steps have other numbers now
            return;
        }

        var worse = same.Where(one => remedy.Aftermath.RowsOtherwise > 0)
            .Select(one => before.TryGetValue(one.Key, out var old) && old.Weight <= one.Value.Weight ? one.Value with { Count = one.Value.Count - old.Count } : one.Value)
            .Where(one => one.Count > 0)
            .ToList();
        Assert.Equal(here + worse.Sum(one => one.Count), remedy.Aftermath.Left);
        Assert.All(worse.Append(left.GetValueOrDefault(subject, (Count: 0, Weight: Weight.Note))), one => Assert.True(one.Weight >= before[subject].Weight, $"{finding} is graver after {remedy.Edit}"));
    }

    private static Dictionary<(CheckKind Check, int Subject), (int Count, Weight Weight)> Count(Sequence<Finding> findings) => findings
        .GroupBy(Found.Subject)
        .ToDictionary(all => all.Key, all => (all.Sum(finding => finding.Count), all.Min(finding => finding.Weight)));

    private static bool IsInside(Piece piece, Area area)
    {
        var (rows, ends) = area.Of == AreaOf.Motif ? (piece.Document.Motif.Rows, piece.Document.Motif.Columns) : (piece.Rows.Count, piece.Ends);
        return area.FirstRow >= 1 && area.FirstRow <= area.LastRow && area.LastRow <= rows
            && area.FirstEnd >= 0 && area.FirstEnd <= area.LastEnd && area.LastEnd < ends;
    }
}
