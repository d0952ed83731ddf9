using System.Net;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using PatternShop.Store;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>A walk through the shop with secrets that the test knows, the log at its lowest level for what is ours: none of them may be in it.</summary>
public sealed class LogSecretTests
{
    private const string Wrong = "a passphrase with a slip";
    private const string ReplyTo = "reader@canary.example";
    private const string ReportText = "The canary sings in row 3.";
    private const string Answer = "The maker hums an answer.";
    private readonly HashSet<string> _secrets = new([TestShop.Email, TestShop.Passphrase, Wrong, ReplyTo, ReportText, Answer], StringComparer.Ordinal);

    [Fact]
    public async Task No_secret_is_logged_whether_requests_succeed_or_fail()
    {
        await using var shop = await TestShop.OpenAsync(null, "--Logging:LogLevel:PatternShop=Trace");
        using var maker = shop.Visit();
        using var reader = shop.Visit();
        _secrets.Add(shop.SetUpPath.Split('=')[1]);
        await maker.FillAsync(shop.SetUpPath, "/setup", TestShop.SetUpFields());
        Keep(maker);
        await maker.PostAsync("/studio", "/sign-out");
        await SignInAsync(shop, maker);
        Keep(maker);

        var (id, places) = await FillAsync(shop, maker, reader);
        Keep(maker);
        Keep(reader);
        await VisitAllAsync(maker, reader, places);
        await BreakAsync(shop, "Reports", "Previews");
        var broken = await VisitAllAsync(maker, reader, places);
        var token = ("__RequestVerificationToken", await reader.TokenAsync("/sign-in"));
        broken += await FailAsync(reader, $"/p/{id}/secret-cloth/v/1/report", token, ("Text", ReportText), ("ReplyTo", ReplyTo));
        await BreakAsync(shop, "Makers", "Versions", "Patterns");
        broken += await VisitAllAsync(maker, reader, places);
        broken += await FailAsync(reader, "/sign-in", token, ("email", TestShop.Email), ("passphrase", TestShop.Passphrase));

        // the server's own word at its start is meant to hold the code, and nothing else is
        var entries = shop.Log.Entries.Where(entry => !entry.Text.Contains("Set it up once, at", StringComparison.Ordinal)).ToList();
        Assert.True(broken > 10, $"only {broken} requests failed");
        Assert.True(entries.Count(entry => entry.Event.Name is "Fault" or "StoreFault") >= broken, "a failed request left no line");
        Assert.True(entries.Count(entry => entry.Event.Name == "Request") > 100, "the log was not at its lowest level");
        Assert.True(_secrets.Count >= 12, $"only {_secrets.Count} secrets");
        Assert.All(_secrets, secret => Assert.True(secret.Length > 7, secret));
        foreach (var secret in _secrets)
        {
            Assert.Equal([], entries.Where(entry => $"{entry.Text} {entry.Values}".Contains(secret, StringComparison.OrdinalIgnoreCase)).Select(entry => $"{secret}: {entry.Category} {entry.Text}").Take(1));
        }
    }

    private static async Task SignInAsync(TestShop shop, Visitor visitor)
    {
        await shop.SignInAsync(visitor, passphrase: Wrong);
        await shop.SignInAsync(visitor, email: Wrong);
        await shop.SignInAsync(visitor);
    }

    private async Task<(PatternId Id, Func<string, string> Places)> FillAsync(TestShop shop, Visitor maker, Visitor reader)
    {
        var document = Charts.Document(Charts.TenEndDiamond) with { Title = "Secret cloth" };
        var id = await shop.PatternAsync(document);
        await TestShop.IssueAsync(maker, id);
        var form = $"/p/{id}/secret-cloth/v/1/report";
        var sent = await reader.PostAsync(form, form, ("Text", ReportText), ("ReplyTo", ReplyTo), ("Row", "3"));
        var report = sent.Location!.Split('/')[^1];
        await maker.PostAsync("/studio/new", $"/studio/patterns/{id}/reports/1", ("Answer", Answer));
        await shop.Workroom.SaveAsync(
            (await shop.MakerAsync()).Id, id, new StepRequest("test", 1, 1, "Turn a cell", document with { Motif = document.Motif.With(0, 0, !document.Motif[0, 0]) }), TestContext.Current.CancellationToken);
        await TestShop.IssueAsync(maker, id);
        var preview = (await TestShop.PreviewAsync(maker, id)).Split('/')[^1];
        _secrets.Add(report);
        _secrets.Add(preview);
        _secrets.Add(await maker.TokenAsync("/studio/new"));
        _secrets.Add(await reader.TokenAsync(form));
        var thrown = await shop.PatternAsync(document);
        await maker.PostAsync("/studio", $"/studio/patterns/{thrown}/delete");
        return (id, path => path
            .Replace("{report}", report, StringComparison.Ordinal)
            .Replace("{preview}", preview, StringComparison.Ordinal)
            .Replace("0000/photos", preview + "/photos", StringComparison.Ordinal)
            .Replace("{setup}", shop.SetUpPath, StringComparison.Ordinal)
            .Replace("{thrown}", thrown.Value, StringComparison.Ordinal)
            .Replace("{id}", id.Value, StringComparison.Ordinal)
            .Replace("{new}", id.Value, StringComparison.Ordinal));
    }

    /// <summary>Asks for every page there is, and says how many failed.</summary>
    private static async Task<int> VisitAllAsync(Visitor maker, Visitor reader, Func<string, string> places)
    {
        var failed = 0;
        foreach (var route in KnownRoutes.All.Where(route => route.Takes("GET")))
        {
            foreach (var visitor in new[] { maker, reader })
            {
                failed += (await visitor.GetAsync(places(route.Path))).Status is HttpStatusCode.InternalServerError or HttpStatusCode.ServiceUnavailable ? 1 : 0;
            }
        }

        return failed;
    }

    private static async Task<int> FailAsync(Visitor visitor, string path, params (string, string)[] fields)
    {
        Assert.True((await visitor.PostPlainAsync(path, fields)).Status is HttpStatusCode.InternalServerError or HttpStatusCode.ServiceUnavailable);
        return 1;
    }

    private void Keep(Visitor visitor)
    {
        foreach (Cookie cookie in visitor.Cookies)
        {
            _secrets.Add(cookie.Value);
        }
    }

    private static async Task BreakAsync(TestShop shop, params string[] tables)
    {
        await using var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = Path.Combine(shop.DataFolder, "patternshop.db"), Pooling = false }.ToString());
        await connection.OpenAsync();
        foreach (var table in tables)
        {
            await using var command = connection.CreateCommand();
            command.CommandText = $"PRAGMA legacy_alter_table = ON; ALTER TABLE {table} RENAME TO Gone{table}";
            await command.ExecuteNonQueryAsync();
        }
    }
}
