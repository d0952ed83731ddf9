using System.Globalization;
using PatternShop.Store;

namespace PatternShop.Web;

/// <summary>What a reader typed into the form, as they typed it.</summary>
public sealed record ReportForm(string Row, string Text, string ReplyTo)
{
    internal static ReportForm Read(IFormCollection form) => new(
        form[nameof(Row)].ToString().Trim(),
        form[nameof(Text)].ToString().ReplaceLineEndings("\n").Trim(),
        form[nameof(ReplyTo)].ToString().Trim());

    /// <summary>The report to be sent, with everything that is wrong with it.</summary>
    /// <param name="rows">Rows of the piece.</param>
    /// <param name="problems">Empty when it can be sent.</param>
    internal NewReport Report(int rows, out IReadOnlyList<FieldProblem> problems)
    {
        int? row = int.TryParse(Row, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= 1 && number <= rows ? number : null;
        var report = new NewReport(row, Text, ReplyTo);
        problems =
        [
            .. Row.Length > 0 && row is null
                ? [new FieldProblem(nameof(Row), "The piece has no such row.", string.Create(CultureInfo.InvariantCulture, $"Type a number from 1 to {rows}, or leave it empty."))]
                : Array.Empty<FieldProblem>(),
            .. report.Check(),
        ];
        return report;
    }
}

/// <summary>How many reports are taken from one network.</summary>
internal sealed class ReportThrottle(TimeProvider time)
{
    public const int Most = 5;
    public static readonly TimeSpan Window = TimeSpan.FromHours(1);
    private readonly NetworkThrottle _networks = new(time, Most, Window);

    /// <summary>Counts a report. Null when it may go on, else how long to wait.</summary>
    public TimeSpan? Wait(HttpContext http) => _networks.Wait(http.Connection.RemoteIpAddress);
}
