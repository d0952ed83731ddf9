using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class MoveLaws
{
    [Fact]
    public void All_moves_at_once_are_the_moves_one_by_one() =>
        Gen.Select(DocumentGen.Documents, DocumentGen.Documents).Sample((old, @new) =>
        {
            var (a, b) = (Piece.Of(old), Piece.Of(@new));
            var difference = PieceDifference.Between(a, b);
            var moves = difference.Moves();
            Assert.Equal(a.Rows.Count + 1, moves.Count);
            for (var woven = 0; woven <= a.Rows.Count; woven += 1 + (a.Rows.Count / 20))
            {
                var (one, all) = (difference.Move(woven), moves[woven]);
                Assert.Equal((one.Next, one.SideNow, one.SideNext, one.SideFits), (all.Next, all.SideNow, all.SideNext, all.SideFits));
                Assert.Equal(one.Passed.Count, difference.Rows.Take(all.Cut).Count(row => row.Fate != RowFate.Same));
            }
        });

    [Fact]
    public void The_changes_are_all_rows_that_differ_each_once_and_those_together_read_alike() =>
        Gen.Select(DocumentGen.Documents, DocumentGen.Documents).Sample((old, @new) =>
        {
            var (a, b) = (Piece.Of(old), Piece.Of(@new));
            var difference = PieceDifference.Between(a, b);
            var changes = difference.Changes();
            foreach (var fate in new[] { RowFate.Changed, RowFate.Inserted, RowFate.Removed })
            {
                var rows = difference.Rows.Where(row => row.Fate == fate).ToList();
                Assert.Equal(rows.Select(row => row.Old).OfType<int>().Order(), changes.Where(change => change.Fate == fate).SelectMany(change => change.Old).Order());
                Assert.Equal(rows.Select(row => row.New).OfType<int>().Order(), changes.Where(change => change.Fate == fate).SelectMany(change => change.New).Order());
            }

            Assert.All(changes, change =>
            {
                Assert.True(change.Old.Count <= 1 || change.Old.All(row => a.Reading(row).Runs.Equals(a.Reading(change.Old[0]).Runs)));
                Assert.True(change.New.Count <= 1 || change.New.All(row => b.Reading(row).Runs.Equals(b.Reading(change.New[0]).Runs)));
            });
        });
}
