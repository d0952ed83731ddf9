using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class EditTests
{
    private static readonly PatternDocument Diamond = Charts.Document(Charts.TenEndDiamond, repeats: 2, offset: 6, balance: 1);

    [Fact]
    public void A_stroke_drawn_on_another_size_is_refused_in_words()
    {
        var problem = Refusal(Stroke(6, 8, (5, 7)), Diamond);
        Assert.Equal("/motif", problem.Pointer);
        Assert.Equal("It was drawn on a motif of 6 rows of 8 ends; the motif now has 10 rows of 10 ends.", problem.What);
        Assert.Equal("Give the motif that size again, or draw it anew.", problem.Remedy);
    }

    [Theory]
    [InlineData(0, 8)]
    [InlineData(8, 0)]
    [InlineData(1001, 8)]
    [InlineData(8, 1001)]
    public void No_motif_is_empty_or_without_bound(int rows, int ends) =>
        Assert.Equal(ProblemCodes.MotifSize, Refusal(new ResizeMotif(rows, ends), Diamond).Code);

    [Fact]
    public void A_refused_field_is_named()
    {
        Assert.Equal("/title", Refusal(new SetWords(Title: " "), Diamond).Pointer);
        Assert.Equal("/width/repeats", Refusal(new SetWidth(Diamond.Width with { Repeats = 0 }), Diamond).Pointer);
        Assert.Equal("/rows/steps/0/last", Refusal(new SetRowPlan(Diamond.Rows with { Steps = [new ChartRows(1, 11, 1)] }), Diamond).Pointer);
    }

    [Fact]
    public void Words_that_are_not_named_stay()
    {
        var document = Diamond with { Notes = "Mind the edge.", Licence = "Weave as you like." };
        var after = Made(new SetWords(Title: "Diamond"), document).Document;
        Assert.Equal(document with { Title = "Diamond" }, after);
    }

    [Fact]
    public void Floating_selvedges_come_and_go_without_touching_the_rest_of_the_width()
    {
        var with = Made(new SetFloating(Charts.AlikeUnder), Diamond).Document;
        Assert.Equal(Diamond with { Width = Diamond.Width with { Floating = Charts.AlikeUnder } }, with);
        Assert.Equal(Diamond, Made(new SetFloating(null), with).Document);
    }

    [Fact]
    public void A_step_that_wove_all_rows_follows_the_size_upwards_and_downwards()
    {
        var document = With(new ChartRows(1, 10, 1), new Repeat(2, [new ChartRows(10, 1, 1)]));
        Assert.Equal([new ChartRows(1, 12, 1), new Repeat(2, [new ChartRows(12, 1, 1)])], Made(new ResizeMotif(12, 10), document).Document.Rows.Steps);
        var smaller = Made(new ResizeMotif(3, 10), document);
        Assert.Equal([new ChartRows(1, 3, 1), new Repeat(2, [new ChartRows(3, 1, 1)])], smaller.Document.Rows.Steps);
        Assert.DoesNotContain(smaller.Consequences, consequence => consequence is StepCut);
    }

    [Fact]
    public void Other_steps_are_cut_to_fit_and_it_is_said()
    {
        var document = With(new ChartRows(2, 7, 1), new PlainRows(2, 1), new Repeat(3, [new ChartRows(7, 5, 1), new ChartRows(8, 8, 1)]), new ChartRows(1, 2, 1));
        var made = Made(new ResizeMotif(5, 4), document); // of 50 over cells, 10 lie in rows 1-5 at ends 1-4; 6 ends on, 4 a motif, is end 3
        Assert.Equal(
            [new ChartRows(2, 5, 1), new PlainRows(2, 1), new Repeat(3, [new ChartRows(5, 5, 1)]), new ChartRows(1, 2, 1)],
            made.Document.Rows.Steps);
        Assert.Equal(
            [
                "40 over cells were cut off.",
                "The pattern now begins at end 3 of the motif instead of end 7.",
                "Step 1 of the row plan weaves chart rows 2–5 instead of chart rows 2–7.",
                "Step 3 of the row plan weaves chart row 5 instead of chart rows 7–5.",
                "Step 3 of the row plan no longer weaves chart row 8.",
            ],
            made.Consequences.Select(Wording.English.ConsequenceText));
    }

    [Fact]
    public void A_row_plan_with_nothing_left_weaves_the_motif_once()
    {
        var made = Made(new ResizeMotif(4, 10), With(new Repeat(2, [new ChartRows(5, 10, 1)])));
        Assert.Equal([new ChartRows(1, 4, 1)], made.Document.Rows.Steps);
        Assert.Equal("The row plan had no row left, so it now weaves chart rows 1–4 once.", Wording.English.ConsequenceText(made.Consequences[^1]));
    }

    [Fact]
    public void Words_for_a_row_stand_in_order_and_blank_ones_go()
    {
        var two = Made(new SetRowWords(2, "Second"), Made(new SetRowWords(5, "Fifth"), Diamond).Document).Document;
        Assert.Equal([new RowWords(2, "Second"), new RowWords(5, "Fifth")], two.RowWords);
        Assert.Equal([new RowWords(2, "Other"), new RowWords(5, "Fifth")], Made(new SetRowWords(2, "Other"), two).Document.RowWords);
        Assert.Equal([new RowWords(5, "Fifth")], Made(new SetRowWords(2, " \n"), two).Document.RowWords);
        Assert.Equal("/rowWords/0/row", Refusal(new SetRowWords(11, "Eleventh"), Diamond).Pointer);
    }

    [Fact]
    public void What_stood_at_a_row_that_is_gone_is_named()
    {
        var document = Diamond with
        {
            RowWords = [new RowWords(4, "Stays"), new RowWords(8, "Beat twice")],
            Videos = [new Video("https://films.example/", "The top", 7)],
            Photos = [new Photo(new string('a', 64), "The point", 8), new Photo(new string('b', 64), "All of it", null)],
        };
        Assert.Equal(
            [
                "Chart row 8 is gone, and your words for it: “Beat twice”",
                "Chart row 7 is gone; its video “The top” stands with the whole pattern now.",
                "Chart row 8 is gone; its photo “The point” stands with the whole pattern now.",
            ],
            Made(new ResizeMotif(6, 10), document).Consequences.Select(Wording.English.ConsequenceText).Take(3));
    }

    [Fact]
    public void A_box_is_covered_and_the_rest_stays()
    {
        var document = Charts.Document("xxxx/xxxx/xxxx");
        var cover = SetCells.Covering(3, 4, new CellRectangle(1, 1, 2, 3), GridText.Read("x.", ".."));
        Assert.Equal(GridText.Read("xxxx", "xx.x", "x..."), Made(cover, document).Document.Motif);
        Assert.Equal("cover 6 cells", Wording.English.EditName(cover));
        Assert.Equal("put down a copy: 6 cells", Wording.English.EditName(cover with { Act = CellsAct.Paste }));
        Assert.Throws<ArgumentOutOfRangeException>(() => SetCells.Covering(3, 4, new CellRectangle(1, 1, 2, 4), GridText.Read("x")));
    }

    [Fact]
    public void Undo_names_what_is_undone()
    {
        var names = new Edit[]
        {
            Stroke(10, 10, (0, 0)), Stroke(10, 10, (0, 0), (1, 1)), new SetWords(Title: "A"), new SetWords(Title: "A", Notes: "B"),
            new SetWidth(Diamond.Width), new ResizeMotif(1, 12), new SetRowWords(3, "A"), new SetVideos([]), new SetPhotos([]), new SetLimits(null), new SetCloth(ClothLook.Plain),
            new SetSheetPart(SheetPart.Notes, false), new SetSheetPart(SheetPart.MakingUp, true),
        }.Select(Wording.English.EditName);
        Assert.Equal(["draw 1 cell", "draw 2 cells", "change the title", "change the words", "change the width", "make the motif 1 row of 12 ends",
             "change the words of chart row 3", "change the videos", "change the photos", "change the longest float", "change thicknesses or colours", "leave out “Notes of the maker”", "print “Making up”"], names);
    }

    [Fact]
    public void A_weft_that_is_taken_away_takes_its_thickness_and_colour_with_it()
    {
        var look = new YarnLook(new Thickness(2, ThicknessUnit.Millimetres), "rust");
        var document = Diamond with
        {
            Rows = Diamond.Rows with { Wefts = [new Weft(Side.Left), new Weft(Side.Right)] },
            Cloth = ClothLook.Plain.With(1, look).With(2, look),
        };
        var done = Assert.IsType<EditResult.Done>(new SetRowPlan(Diamond.Rows).Apply(document));
        Assert.Equal([look], done.Document.Cloth.Wefts);
        Assert.Equal(document.Cloth, Assert.IsType<EditResult.Done>(new SetRowPlan(document.Rows).Apply(document)).Document.Cloth);
        Assert.Equal(ProblemCodes.ClothWefts, Assert.Single(Assert.IsType<EditResult.Refused>(new SetCloth(ClothLook.Plain.With(2, look)).Apply(Diamond)).Problems).Code);
    }

    private static SetCells Stroke(int rows, int ends, params (int Row, int End)[] cells)
    {
        var chosen = BitGrid.Create(rows, ends, (row, end) => cells.Contains((row, end)));
        return new SetCells(chosen, chosen);
    }

    private static PatternDocument With(params RowStep[] steps) => Diamond with { Rows = Diamond.Rows with { Steps = steps.ToSequence() } };

    private static EditResult.Done Made(Edit edit, PatternDocument document) => Assert.IsType<EditResult.Done>(edit.Apply(document));

    private static Problem Refusal(Edit edit, PatternDocument document) =>
        Assert.Single(Assert.IsType<EditResult.Refused>(edit.Apply(document)).Problems);
}
