using System.Globalization;
using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;

namespace PatternShop.Store;

/// <summary>Mistakes that readers report, and what their makers answer.</summary>
public sealed class ReportDesk
{
    /// <summary>Reports of a pattern that may wait for an answer.</summary>
    public const int WaitingMost = 200;

    public const int AnswerMost = 2000;
    private readonly StoreAccess _store;
    private readonly TimeProvider _time;
    private readonly RandomNumberGenerator _random;

    internal ReportDesk(StoreAccess store, TimeProvider time, RandomNumberGenerator random) => (_store, _time, _random) = (store, time, random);

    /// <summary>Lays a report of a version that readers can see on its maker's desk.</summary>
    public async Task<SendResult> SendAsync(PatternId pattern, int number, NewReport report, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(report);
        return report.Check() is { Count: > 0 } problems
            ? new SendResult.Refused(problems)
            : await _store.WriteAsync(context => SendAsync(context, pattern, number, report, cancellationToken), cancellationToken);
    }

    /// <summary>The report behind a secret, with the correction that answers it; null when there is none.</summary>
    public Task<Report?> FindAsync(string secret, CancellationToken cancellationToken = default) => _store.ReadAsync(
        async context =>
        {
            var hash = Token.HashOf(secret);
            return await Told(context, context.Reports.Where(row => row.SecretHash == hash)).SingleOrDefaultAsync(cancellationToken) is { } report
                ? report with { CorrectedIn = await CorrectedInAsync(context, report, cancellationToken) }
                : null;
        },
        cancellationToken);

    /// <summary>Every report about a maker's pattern, those that wait for an answer first, then the newest; null when they have no such pattern.</summary>
    public Task<IReadOnlyList<Report>?> ListAsync(MakerId maker, PatternId id, CancellationToken cancellationToken = default) => _store.ReadAsync<IReadOnlyList<Report>?>(
        async context => await Owns(context, maker, id).AnyAsync(cancellationToken)
            ? [.. (await Told(context, context.Reports.Where(row => row.PatternId == id.Value)).ToListAsync(cancellationToken)).OrderBy(report => report.Answer is not null).ThenByDescending(report => report.Id)]
            : null,
        cancellationToken);

    /// <summary>How many reports about a maker's patterns wait for an answer, by pattern.</summary>
    public Task<IReadOnlyDictionary<PatternId, int>> WaitingAsync(MakerId maker, CancellationToken cancellationToken = default) => _store.ReadAsync<IReadOnlyDictionary<PatternId, int>>(
        async context => await (
            from report in context.Reports
            where report.Answer == null
            join pattern in context.Patterns on report.PatternId equals pattern.Id
            where pattern.MakerId == maker.Value
            group report by report.PatternId into waiting
            select new { waiting.Key, Count = waiting.Count() })
            .ToDictionaryAsync(waiting => new PatternId(waiting.Key), waiting => waiting.Count, cancellationToken),
        cancellationToken);

    /// <summary>Answers a report, or answers it anew. Says what is wrong with the answer; null when the maker has no such report.</summary>
    public async Task<IReadOnlyList<FieldProblem>?> AnswerAsync(MakerId maker, PatternId id, long report, string answer, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(answer);
        IReadOnlyList<FieldProblem> problems =
        [
            .. NewReport.Check("Answer", "the answer", answer, AnswerMost),
            .. answer.Trim().Length == 0 ? [new FieldProblem("Answer", "Nothing is written.", "Write an answer.")] : Array.Empty<FieldProblem>(),
        ];
        return await _store.WriteAsync<IReadOnlyList<FieldProblem>?>(
            async context =>
            {
                var mine = context.Reports.Where(row => row.Id == report && row.PatternId == id.Value && Owns(context, maker, id).Any());
                if (await mine.SingleOrDefaultAsync(cancellationToken) is not { } row)
                {
                    return null;
                }

                if (problems.Count == 0)
                {
                    (row.Answer, row.AnsweredAt) = (answer, _time.GetUtcNow());
                }

                return problems;
            },
            cancellationToken);
    }

    /// <summary>The ids of those reports that are about the pattern, as a version keeps them.</summary>
    internal static async Task<string> MendsAsync(StoreContext context, string pattern, IReadOnlyList<long> reports, CancellationToken cancellationToken)
    {
        var known = await context.Reports.Where(row => row.PatternId == pattern && reports.Contains(row.Id)).Select(row => row.Id).Order().ToListAsync(cancellationToken);
        return string.Join(',', known.Select(id => id.ToString(CultureInfo.InvariantCulture)));
    }

    /// <summary>What readers are told of the reports that a version mends.</summary>
    internal static async Task<IReadOnlyList<MendedRow>> MendedAsync(StoreContext context, VersionRow version, CancellationToken cancellationToken)
    {
        var ids = IdsOf(version.Mends);
        return ids.Count == 0
            ? []
            : await context.Reports.Where(row => ids.Contains(row.Id)).Select(row => new { row.Number, row.Row }).Distinct()
                .OrderBy(row => row.Number).ThenBy(row => row.Row).Select(row => new MendedRow(row.Number, row.Row)).ToListAsync(cancellationToken);
    }

    private static async Task<int?> CorrectedInAsync(StoreContext context, Report report, CancellationToken cancellationToken)
    {
        var corrections = await context.Versions.Where(version => version.PatternId == report.Pattern.Value && version.Mends != "")
            .OrderByDescending(version => version.Number)
            .Select(version => new { version.Number, version.Mends })
            .ToListAsync(cancellationToken);
        return corrections.FirstOrDefault(version => IdsOf(version.Mends).Contains(report.Id))?.Number;
    }

    private static List<long> IdsOf(string mends) =>
        [.. mends.Split(',', StringSplitOptions.RemoveEmptyEntries).Select(id => long.Parse(id, CultureInfo.InvariantCulture))];

    private async Task<SendResult> SendAsync(StoreContext context, PatternId pattern, int number, NewReport report, CancellationToken cancellationToken)
    {
        var seen = context.Versions.Where(version =>
            version.PatternId == pattern.Value && version.Number == number && context.Patterns.Any(row => row.Id == pattern.Value && row.WithdrawnAt == null));
        if (!await seen.AnyAsync(cancellationToken))
        {
            return new SendResult.Missing();
        }

        if (await context.Reports.CountAsync(row => row.PatternId == pattern.Value && row.Answer == null, cancellationToken) >= WaitingMost)
        {
            return new SendResult.Full();
        }

        var secret = Token.Make(_random, Token.SecretLength);
        context.Reports.Add(new ReportRow
        {
            PatternId = pattern.Value,
            Number = number,
            Row = report.Row,
            Text = report.Text,
            ReplyTo = report.ReplyTo,
            SecretHash = Token.HashOf(secret),
            SentAt = _time.GetUtcNow(),
        });
        return new SendResult.Sent(secret);
    }

    private static IQueryable<Report> Told(StoreContext context, IQueryable<ReportRow> reports) =>
        from report in reports
        join version in context.Versions on new { report.PatternId, report.Number } equals new { version.PatternId, version.Number }
        select new Report(
            report.Id, new PatternId(report.PatternId), version.Title, report.Number, report.Row, report.Text, report.ReplyTo, report.SentAt, report.Answer, report.AnsweredAt);

    private static IQueryable<PatternRow> Owns(StoreContext context, MakerId maker, PatternId id) =>
        context.Patterns.Where(pattern => pattern.Id == id.Value && pattern.MakerId == maker.Value);
}
