using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using PatternShop.Store;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>What the server says of itself when something is wrong with its data folder.</summary>
public sealed class HealthTests
{
    [Fact]
    public async Task A_well_server_is_alive_and_ready()
    {
        await using var shop = await TestShop.OpenAsync();
        using var visitor = shop.Visit();
        Assert.Equal((HttpStatusCode.OK, "Healthy"), await AskAsync(visitor, "/healthz"));
        Assert.Equal((HttpStatusCode.OK, "Ready"), await AskAsync(visitor, "/readyz"));
    }

    [Fact]
    public async Task A_damaged_sheet_is_not_sent_and_the_operator_is_told_its_hash_once()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var id = await shop.PatternAsync(Charts.Document(Charts.TenEndDiamond));
        await TestShop.IssueAsync(maker, id);
        var file = (await shop.Services.GetRequiredService<PublicShelf>().VersionAsync(id, 1, TestContext.Current.CancellationToken))!.Files[0];
        var address = $"/files/{file.Hash}/{file.Name}";
        await DamageAsync(shop, file.Hash);
        for (var time = 0; time < 2; time++)
        {
            var answer = await maker.GetAsync(address);
            Assert.Equal(HttpStatusCode.InternalServerError, answer.Status);
            Assert.StartsWith("text/html", answer.Headers["Content-Type"], StringComparison.Ordinal);
            Assert.DoesNotContain("immutable", answer.Headers.GetValueOrDefault("Cache-Control", ""), StringComparison.Ordinal);
        }

        Assert.Single(shop.Log.Lines, line => line.Contains(file.Hash, StringComparison.Ordinal) && line.Contains("damaged", StringComparison.Ordinal) && !line.StartsWith("Fault ", StringComparison.Ordinal));
        Assert.Equal((HttpStatusCode.ServiceUnavailable, "Not ready: data damaged"), await AskAsync(maker, "/readyz"));
        Assert.Equal((HttpStatusCode.OK, "Healthy"), await AskAsync(maker, "/healthz"));
        maker.Dispose();
    }

    [Fact]
    public async Task A_folder_with_keys_and_no_database_is_refused_and_prints_no_set_up_code()
    {
        using var folder = new Folder();
        Directory.CreateDirectory(folder["keys"]);
        folder.Write(Path.Combine("keys", "key-1.xml"), "<key/>");
        using var errors = new StringWriter { NewLine = "\n" };
        var code = await CommandLine.RunAsync(
            ["--PatternShop:DataFolder=" + folder.Path, "--urls=http://127.0.0.1:0", "--Logging:Console:LogLevel:Default=None"], TextReader.Null, TextWriter.Null, errors);
        Assert.Equal(1, code);
        Assert.StartsWith($"{folder.Path}: There is no shop in the database, but the folder holds keys of one.", errors.ToString(), StringComparison.Ordinal);
        Assert.Equal(1, errors.ToString().Count(character => character == '\n'));
        Assert.DoesNotContain("patternshop.db", folder.Names, StringComparer.Ordinal);
    }

    [Fact]
    public async Task Keys_that_cannot_be_read_are_said_and_the_server_is_alive_but_not_ready()
    {
        await using var shop = await TestShop.OpenAsync(
            async data =>
            {
                await EmptyDatabase.PutAsync(data);
                Directory.CreateDirectory(Path.Combine(data, "keys"));
                await File.WriteAllTextAsync(Path.Combine(data, "keys", "key-1.xml"), "not a key", TestContext.Current.CancellationToken);
            },
            new TestClock());
        using var visitor = shop.Visit();
        Assert.Equal((HttpStatusCode.ServiceUnavailable, "Not ready: keys unreadable"), await AskAsync(visitor, "/readyz"));
        Assert.Equal((HttpStatusCode.ServiceUnavailable, "Not ready: keys unreadable"), await AskAsync(visitor, "/readyz"));
        Assert.Equal((HttpStatusCode.OK, "Healthy"), await AskAsync(visitor, "/healthz"));
        Assert.Single(shop.Log.Lines, line => line.StartsWith("The keys in the data folder", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_full_disk_is_said_once_and_over_when_there_is_room_again()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var health = shop.Services.GetRequiredService<StoreHealth>();
        health.Note(StoreFaults.Explain(new IOException("No space left on device", 28)));
        health.Note(StoreFaults.Explain(new SqliteException("database or disk is full", 13)));
        Assert.Equal((HttpStatusCode.ServiceUnavailable, "Not ready: disk full"), await AskAsync(maker, "/readyz"));
        Assert.Equal(HttpStatusCode.OK, (await maker.GetAsync("/")).Status);
        Assert.Single(shop.Log.Lines, line => line.StartsWith("The disk is full.", StringComparison.Ordinal));

        shop.Clock.Now += TimeSpan.FromSeconds(10);
        Assert.Equal((HttpStatusCode.OK, "Ready"), await AskAsync(maker, "/readyz"));
        maker.Dispose();
    }

    private static async Task DamageAsync(TestShop shop, string hash)
    {
        await using var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = Path.Combine(shop.DataFolder, "patternshop.db"), Pooling = false }.ToString());
        await connection.OpenAsync(TestContext.Current.CancellationToken);
        await using var command = connection.CreateCommand();
        command.CommandText = "SELECT group_concat('DROP TRIGGER ' || name || ';', ' ') FROM sqlite_schema WHERE type = 'trigger' AND tbl_name = 'Files'";
        command.CommandText = (string)(await command.ExecuteScalarAsync(TestContext.Current.CancellationToken))! + "UPDATE Files SET Bytes = CAST(Bytes || '!' AS BLOB) WHERE Hash = $hash";
        command.Parameters.AddWithValue("$hash", hash);
        await command.ExecuteNonQueryAsync(TestContext.Current.CancellationToken);
    }

    private static async Task<(HttpStatusCode, string)> AskAsync(Visitor visitor, string path)
    {
        var answer = await visitor.GetAsync(path);
        return (answer.Status, answer.Text);
    }
}
