using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using PatternShop.Store;
using PatternShop.Tests.Shared;
using PatternShop.Weave;

namespace PatternShop.Web.Tests;

/// <summary>The real server on a port of its own, with a folder of its own that goes with it and a clock that the test sets.</summary>
internal sealed class TestShop : IAsyncDisposable
{
    public const string Email = "maker@example.org";
    public const string Passphrase = "five wooden combs sing";
    public const string Studio = "Tansy Lane";
    private const int FewRounds = 10;
    private readonly DirectoryInfo _top;
    private readonly WebApplication _app;

    private TestShop(DirectoryInfo top, WebApplication app, LogLines log, TestClock clock)
    {
        (_top, _app, Log, Clock) = (top, app, log, clock);
        Address = new Uri(app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single());
    }

    public Uri Address { get; }

    public LogLines Log { get; }

    public TestClock Clock { get; }

    public IServiceProvider Services => _app.Services;

    public Workroom Workroom => Services.GetRequiredService<Workroom>();

    public Makers Makers => Services.GetRequiredService<Makers>();

    public string DataFolder => Services.GetRequiredService<HostSettings>().DataFolder;

    /// <summary>The path of the set-up page, as the server said it.</summary>
    public string SetUpPath => new Uri(Log.Lines.Single(line => line.Contains("Set it up once", StringComparison.Ordinal)).Split(' ')[^1]).PathAndQuery;

    public static Task<TestShop> OpenAsync(Action<IServiceCollection>? change = null, params string[] settings) =>
        OpenAsync(EmptyDatabase.PutAsync, new TestClock(), change, settings);

    /// <summary>A shop on a data folder that the caller fills before the program opens it.</summary>
    public static async Task<TestShop> OpenAsync(Func<string, Task> fill, TestClock clock, Action<IServiceCollection>? change = null, params string[] settings)
    {
        var top = Directory.CreateTempSubdirectory("shop");
        var data = Path.Combine(top.FullName, "data");
        await fill(data);
        var log = new LogLines();
        var builder = PatternShopHost.Builder(["--urls=http://127.0.0.1:0", $"--PatternShop:DataFolder={data}", .. settings]);
        builder.Logging.ClearProviders();
        builder.Logging.AddProvider(log);
        builder.Services.AddSingleton<TimeProvider>(clock);
        builder.Services.AddSingleton(new PassphraseHashing(FewRounds, PassphraseHashing.Pbkdf2));
        change?.Invoke(builder.Services);
        var app = PatternShopHost.Build(builder, HostSettings.Read(builder.Configuration, builder.Environment.ContentRootPath, out var problem) ?? throw new InvalidOperationException(problem));
        await PatternShopHost.StartAsync(app);
        return new TestShop(top, app, log, clock);
    }

    /// <summary>A shop with its maker, who stands at the workbench.</summary>
    public static async Task<(TestShop Shop, Visitor Maker)> SetUpAsync(params string[] settings)
    {
        var shop = await OpenAsync(null, settings);
        var visitor = shop.Visit();
        var answer = await visitor.FillAsync(shop.SetUpPath, "/setup", SetUpFields());
        return answer.Location == "/studio" ? (shop, visitor) : throw new InvalidOperationException(answer.Text);
    }

    public static (string Name, string Value)[] SetUpFields(string passphrase = Passphrase, string? again = null, string zone = "UTC") =>
        [("StudioName", Studio), ("Handle", "tansy-lane"), ("Email", Email), ("Passphrase", passphrase), ("PassphraseAgain", again ?? passphrase), ("TimeZone", zone)];

    public Visitor Visit() => new(Address);

    public Task<Reply> SignInAsync(Visitor visitor, string email = Email, string passphrase = Passphrase) =>
        visitor.FillAsync("/sign-in", "/sign-in", ("email", email), ("passphrase", passphrase));

    /// <summary>The maker with that e-mail address.</summary>
    public async Task<Maker> MakerAsync(string email = Email) =>
        await Makers.FindAsync(await Makers.IdOfAsync(email) ?? throw new InvalidOperationException($"No maker {email}.")) ?? throw new InvalidOperationException($"{email} is gone.");

    /// <summary>A second maker with the passphrase of the first; there is no way in for them yet, so they come past the store.</summary>
    public async Task<Visitor> SecondMakerAsync(string email = "other@example.org")
    {
        await SqlAsync(
            """
            INSERT INTO Makers (StudioName, Handle, Email, EmailKey, PassphraseHash, Stamp, TimeZone, MadeAt)
            SELECT 'Reed and Rush', 'reed-and-rush', $email, $email, PassphraseHash, 'another stamp', TimeZone, MadeAt FROM Makers
            """,
            ("$email", email));
        var visitor = Visit();
        var answer = await SignInAsync(visitor, email);
        return answer.Location == "/studio" ? visitor : throw new InvalidOperationException(answer.Text);
    }

    /// <summary>Does something to the database past the store.</summary>
    public async Task SqlAsync(string sql, params (string Name, string Value)[] parameters)
    {
        await using var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = Path.Combine(DataFolder, "patternshop.db"), Pooling = false }.ToString());
        await connection.OpenAsync();
        await using var command = connection.CreateCommand();
        command.CommandText = sql;
        Array.ForEach(parameters, parameter => command.Parameters.AddWithValue(parameter.Name, parameter.Value));
        await command.ExecuteNonQueryAsync();
    }

    public async Task<PatternId> PatternAsync(PatternDocument document, string email = Email) => await Workroom.CreateAsync((await MakerAsync(email)).Id, document);

    /// <summary>Issues a pattern as it stands, by the maker's form.</summary>
    public static Task<Reply> IssueAsync(Visitor maker, PatternId id, string note = "", string kind = "correction")
    {
        var path = $"/studio/patterns/{id}/issue";
        return maker.FillAsync(path, path, ("Note", note), ("Kind", kind));
    }

    /// <summary>Begins a preview by the maker's form, and reads its path from the page that answers.</summary>
    public static async Task<string> PreviewAsync(Visitor maker, PatternId id)
    {
        var path = $"/studio/patterns/{id}/preview";
        return new Uri((await maker.FillAsync(path, path)).Html.QuerySelector(".address a")!.GetAttribute("href")!).AbsolutePath;
    }

    /// <summary>Ends as the program does when it is told to.</summary>
    public Task StopAsync() => _app.StopAsync();

    public async ValueTask DisposeAsync()
    {
        await _app.DisposeAsync();
        _top.Delete(recursive: true);
    }
}
