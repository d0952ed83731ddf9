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
        Cases.Sample(
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
            iter: Effort.Of(400, 20_000));
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
        Assert.Equal(remedy.Aftermath.Left, left.GetValueOrDefault(subject).Count);
        Assert.True(remedy.Aftermath.Left < before[subject].Count, $"{finding} stands after {remedy.Edit}");
        Assert.Equal((after.Ends, after.Rows.Count), (remedy.Aftermath.Ends, remedy.Aftermath.Rows));
        if (remedy.Aftermath.RowsOtherwise > 0)
        {
            var brought = left.Where(one => one.Value.Weight == Weight.Fault && one.Key != subject)
                .Where(one => !before.TryGetValue(one.Key, out var old) || old.Weight > Weight.Fault || old.Count < one.Value.Count)
                .Select(one => one.Key.Check).Distinct().Order();
            Assert.Equal(brought, remedy.Aftermath.Brings.Where(one => one.Weight == Weight.Fault).Select(one => one.Check).Order());
        }

        var words = Wording.English.AftermathText(Piece.Of(document), finding, remedy);
        Assert.Equal(remedy.Aftermath.Brings.Count > 0, words.Contains("But it brings", StringComparison.Ordinal));
        Assert.NotEmpty(Wording.English.EditName(remedy.Edit));
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
