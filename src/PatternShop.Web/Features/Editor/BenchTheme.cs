using MudBlazor;

namespace PatternShop.Web;

/// <summary>The colours and letters of the static pages, for the component library.</summary>
internal static class BenchTheme
{
    private static readonly string[] Letters = ["Atkinson Hyperlegible Next", "system-ui", "sans-serif"];

    public static MudTheme Theme { get; } = new()
    {
        PaletteLight = new PaletteLight
        {
            Primary = "#7a3b1d",
            PrimaryContrastText = "#fffaf4",
            Background = "#faf7f2",
            Surface = "#fffdf9",
            TextPrimary = "#26221d",
            TextSecondary = "#5c544a",
            ActionDefault = "#5c544a",
            LinesInputs = "#8d8376",
            LinesDefault = "#ddd4c7",
            Divider = "#ddd4c7",
            Error = "#a3261b",
        },
        PaletteDark = new PaletteDark
        {
            Primary = "#eab48c",
            PrimaryContrastText = "#26180f",
            Background = "#1c1916",
            Surface = "#26221e",
            TextPrimary = "#efe8de",
            TextSecondary = "#bdb2a4",
            ActionDefault = "#bdb2a4",
            LinesInputs = "#8d8376",
            LinesDefault = "#453e36",
            Divider = "#453e36",
            Error = "#ff9d92",
        },
        LayoutProperties = new LayoutProperties { DefaultBorderRadius = "8px" },
        Typography = new Typography
        {
            Default = new DefaultTypography { FontFamily = Letters, FontSize = "1rem", LineHeight = "1.5" },
            Button = new ButtonTypography { FontFamily = Letters, FontSize = "1rem", FontWeight = "700", TextTransform = "none", LetterSpacing = "0" },
            Body1 = new Body1Typography { FontFamily = Letters, FontSize = "1rem" },
            Body2 = new Body2Typography { FontFamily = Letters, FontSize = "1rem" },
        },
    };
}
