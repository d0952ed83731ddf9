using Microsoft.AspNetCore.Components;
using MudBlazor;

namespace PatternShop.Web;

/// <summary>The component library's icons as pieces of markup that all pages share, for buttons that are plain elements.</summary>
internal static class StepIcon
{
    public static MarkupString Less { get; } = Of(Icons.Material.Filled.Remove);

    public static MarkupString More { get; } = Of(Icons.Material.Filled.Add);

    public static MarkupString Earlier { get; } = Of(Icons.Material.Filled.ArrowUpward);

    public static MarkupString Later { get; } = Of(Icons.Material.Filled.ArrowDownward);

    public static MarkupString Away { get; } = Of(Icons.Material.Filled.Close);

    private static MarkupString Of(string shapes) =>
        new($"<svg class=\"mud-icon-root mud-svg-icon mud-icon-size-medium\" focusable=\"false\" viewBox=\"0 0 24 24\" aria-hidden=\"true\">{shapes}</svg>");
}
