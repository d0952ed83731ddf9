using Microsoft.Playwright;

namespace PatternShop.EndToEnd;

/// <summary>Who looks at a page, and with what.</summary>
/// <param name="Width">Width of the window in CSS pixels.</param>
/// <param name="Height">Height of the window.</param>
/// <param name="Script">Whether scripts run.</param>
/// <param name="Dark">Whether dark pages are asked for.</param>
public sealed record Reader(int Width = 1280, int Height = 900, bool Script = true, bool Dark = false)
{
    public static Reader Desk { get; } = new();

    public static Reader Phone { get; } = new(390, 844);

    public BrowserNewContextOptions Options(Uri server) => new()
    {
        BaseURL = server?.ToString(),
        ViewportSize = new ViewportSize { Width = Width, Height = Height },
        JavaScriptEnabled = Script,
        ColorScheme = Dark ? ColorScheme.Dark : ColorScheme.Light,
        HasTouch = Width < 600,
        IsMobile = Width < 600,
        Locale = "en-GB",
    };
}
