using System.Globalization;
using Bunit;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class ShapeRequestTests
{
    private static readonly PatternDocument Motif = Charts.Document("x.x.x./....../xx..../...xxx");

    // done by the script itself
    private static readonly string[] OfTheScript = ["copy", "putDown", "coverWith", "clear"];

    [Fact]
    public void Every_button_of_the_panel_asks_for_something_that_can_be_done()
    {
        using var context = new BunitContext();
        var buttons = context.Render<ShapePanel>().FindAll("[data-act]");
        Assert.True(buttons.Count > 20);
        foreach (var button in buttons.Where(button => !OfTheScript.Contains(button.GetAttribute("data-act"))))
        {
            var (what, rows, ends) = button.GetAttribute("data-act")!.Split(':', ',') is [var word, var up, var right]
                ? (word, int.Parse(up, CultureInfo.InvariantCulture), int.Parse(right, CultureInfo.InvariantCulture))
                : (button.GetAttribute("data-act")!, 0, 0);
            var edit = new ShapeRequest(what, 1, 1, 2, 2, rows, ends).Edit();
            Assert.IsType<EditResult.Done>(edit?.Apply(Motif));
            Assert.Equal(button.HasAttribute("data-needs"), new ShapeRequest(what, 0, 0, 0, 0, rows, ends).Edit() is null);
        }
    }

    [Theory]
    [InlineData("rowsAbove", "put in rows 4–5")]
    [InlineData("rowsBelow", "put in rows 2–3")]
    [InlineData("endsLeft", "put in ends 3–5")]
    [InlineData("endsRight", "put in ends 6–8")]
    [InlineData("removeRows", "take out rows 2–3")]
    [InlineData("removeEnds", "take out ends 3–5")]
    [InlineData("move", "move 2 rows of 3 ends")]
    [InlineData("mirrorAcross", "mirror left and right of 2 rows of 3 ends")]
    public void A_request_is_about_what_is_chosen(string what, string name) =>
        Assert.Equal(name, Wording.English.EditName(new ShapeRequest(what, 1, 2, 2, 3, 1).Edit()!));

    [Fact]
    public void What_nobody_knows_is_nothing() => Assert.Null(new ShapeRequest("explode", 0, 0, 1, 1).Edit());

    [Fact]
    public void An_answer_says_what_was_done_what_followed_or_why_not()
    {
        var edit = new RemoveRows(2, 1);
        var done = ShapeAnswer.Of(edit, new Acknowledgement.Saved([new StepCut(1, new ChartRows(1, 3, 1), new ChartRows(1, 2, 1))]), Wording.English);
        Assert.Equal((true, "Done: take out row 2. Step 1 of the row plan weaves chart rows 1–2 instead of chart rows 1–3."), (done.Done, string.Join(' ', done.Words)));
        var refused = ShapeAnswer.Of(edit, new Acknowledgement.Refused([new Problem("c", "/motif", 0, 0, "It does not fit.", "Choose another.")]), Wording.English);
        Assert.Equal((false, "It does not fit. Choose another."), (refused.Done, Assert.Single(refused.Words)));
        Assert.All(
            new Acknowledgement[] { new Acknowledgement.SignedOut(), new Acknowledgement.Gone(), new Acknowledgement.Unsaved() },
            one => Assert.StartsWith("This is not saved", Assert.Single(ShapeAnswer.Of(edit, one, Wording.English).Words), StringComparison.Ordinal));
    }
}
