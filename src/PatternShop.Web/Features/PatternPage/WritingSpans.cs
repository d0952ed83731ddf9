using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>
/// Directions as <see cref="Wording.WritingText"/> writes them, letter for letter, each run kept on one line. A bracket in a bracket
/// is an element of its own, so that it can be told apart. Where there are brackets, ears are given <see cref="Wording.SpokenText"/> instead.
/// </summary>
public sealed class WritingSpans : ComponentBase
{
    [Inject] public required Wording Words { get; set; }

    [Parameter, EditorRequired] public required Writing Writing { get; set; }

    protected override void BuildRenderTree(RenderTreeBuilder builder)
    {
        if (Writing.Depth == 0)
        {
            Join(builder, Writing.Items, inside: false);
            return;
        }

        builder.OpenElement(8, "span");
        builder.AddAttribute(9, "aria-hidden", "true");
        Join(builder, Writing.Items, inside: false);
        builder.CloseElement();
        Unbroken(builder, "unseen", Words.SpokenText(Writing));
    }

    private void Join(RenderTreeBuilder builder, IEnumerable<WritingItem> items, bool inside)
    {
        foreach (var (index, item) in items.Index())
        {
            if (index > 0)
            {
                builder.AddContent(0, ", ");
            }

            if (item is BracketItem bracket)
            {
                builder.OpenElement(1, "span");
                builder.AddAttribute(2, "class", inside ? "inner" : "bracket");
                builder.AddContent(3, inside ? "(" : "[");
                Join(builder, bracket.Items, inside: true);
                builder.AddContent(4, inside ? ") " : "] ");
                Unbroken(builder, "times", Words.TimesText(bracket));
                builder.CloseElement();
            }
            else
            {
                Unbroken(builder, "run", Words.ItemText(item));
            }
        }
    }

    private static void Unbroken(RenderTreeBuilder builder, string kind, string text)
    {
        builder.OpenElement(5, "span");
        builder.AddAttribute(6, "class", kind);
        builder.AddContent(7, text);
        builder.CloseElement();
    }
}
