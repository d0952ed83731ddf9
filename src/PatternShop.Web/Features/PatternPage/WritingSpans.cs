using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>Directions as <see cref="Wording.WritingText"/> writes them, letter for letter, each run kept on one line.</summary>
public sealed class WritingSpans : ComponentBase
{
    [Inject] public required Wording Words { get; set; }

    [Parameter, EditorRequired] public required Writing Writing { get; set; }

    protected override void BuildRenderTree(RenderTreeBuilder builder) =>
        Join(builder, Writing.Items, item =>
        {
            if (item is BracketItem bracket)
            {
                builder.AddContent(0, "[");
                Join(builder, bracket.Runs, run => Unbroken(builder, "run", Words.RunText(run)));
                builder.AddContent(1, "] ");
                Unbroken(builder, "times", $"× {Words.Number(bracket.Times)}");
            }
            else
            {
                Unbroken(builder, "run", Words.ItemText(item));
            }
        });

    private static void Join<T>(RenderTreeBuilder builder, IEnumerable<T> parts, Action<T> write)
    {
        foreach (var (index, part) in parts.Index())
        {
            if (index > 0)
            {
                builder.AddContent(2, ", ");
            }

            write(part);
        }
    }

    private static void Unbroken(RenderTreeBuilder builder, string kind, string text)
    {
        builder.OpenElement(3, "span");
        builder.AddAttribute(4, "class", kind);
        builder.AddContent(5, text);
        builder.CloseElement();
    }
}
