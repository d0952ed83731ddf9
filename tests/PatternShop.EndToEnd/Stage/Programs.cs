namespace PatternShop.EndToEnd;

/// <summary>Where the programs are that these tests start.</summary>
internal static class Programs
{
    private static readonly string[] ChromiumNames = ["chromium", "chromium-browser", "google-chrome-stable", "google-chrome"];

    /// <summary>The built app: PATTERNSHOP_APP, else what the build of the checkout has made.</summary>
    public static string App { get; } = FindApp();

    /// <summary>The browser: PATTERNSHOP_CHROMIUM, else the first that stands on the path.</summary>
    public static string Chromium { get; } =
        Setting("PATTERNSHOP_CHROMIUM") ?? ChromiumNames.Select(OnPath).FirstOrDefault(path => path is not null)
        ?? throw new InvalidOperationException("Chromium was not found. Install it, or set PATTERNSHOP_CHROMIUM to the program; tests/run.sh does both.");

    /// <summary>The program that makes pictures of printed pages: PATTERNSHOP_PDFTOPPM, else the one on the path.</summary>
    public static string Pictures { get; } = Setting("PATTERNSHOP_PDFTOPPM") ?? "pdftoppm";

    private static string? Setting(string name) => Environment.GetEnvironmentVariable(name) is { Length: > 0 } value ? value : null;

    private static string? OnPath(string name) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Select(folder => Path.Combine(folder, name)).FirstOrDefault(File.Exists);

    private static string FindApp()
    {
        var here = new DirectoryInfo(AppContext.BaseDirectory);
        var built = Path.Combine("src", "PatternShop.Web", "bin", here.Parent!.Name, here.Name, "PatternShop.Web.dll");
        var top = here;
        while (top is not null && !File.Exists(Path.Combine(top.FullName, "PatternShop.sln")))
        {
            top = top.Parent;
        }

        var app = Setting("PATTERNSHOP_APP") ?? Path.Combine(top?.FullName ?? "", built);
        return File.Exists(app) ? app : throw new InvalidOperationException($"{app} is not there. Build the solution first.");
    }
}
