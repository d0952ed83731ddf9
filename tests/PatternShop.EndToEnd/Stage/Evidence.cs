using Microsoft.Playwright;

namespace PatternShop.EndToEnd;

/// <summary>What is kept of a journey that failed: a picture and the text of each page, the console, the server's log.</summary>
internal static class Evidence
{
    /// <summary>Where evidence is kept, a folder a journey.</summary>
    public static string Folder { get; } = Path.Combine(AppContext.BaseDirectory, "TestResults", "evidence");

    /// <summary>Writes the evidence of a journey and says where it lies.</summary>
    public static async Task<string> KeepAsync(string top, string journey, IEnumerable<Visit> visits, string serverLog)
    {
        var folder = Directory.CreateDirectory(Path.Combine(top, Plain(journey))).FullName;
        await File.WriteAllTextAsync(Path.Combine(folder, "server.log"), serverLog);
        foreach (var (index, visit) in visits.Index())
        {
            string File(string kind) => Path.Combine(folder, FormattableString.Invariant($"window-{index + 1}.{kind}"));
            await System.IO.File.WriteAllLinesAsync(File("log"), [visit.Page.Url, "", "Went wrong:", .. visit.Faults, "", "Console:", .. visit.Console]);
            await System.IO.File.WriteAllTextAsync(File("html"), await visit.Page.ContentAsync());
            await visit.Page.ScreenshotAsync(new PageScreenshotOptions { Path = File("png"), FullPage = true });
        }

        return folder;
    }

    private static string Plain(string journey)
    {
        var plain = string.Concat(journey.Select(letter => char.IsAsciiLetterOrDigit(letter) || letter == '.' ? letter : '_'));
        return plain.Length <= 120 ? plain : plain[..120];
    }
}
