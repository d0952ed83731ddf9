using System.Diagnostics;
using System.Net;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>
/// The commands of the README, run by <c>dotnet run</c> as they are written there, from the top folder and with names that are relative to it.
/// Only the build is skipped: the program runs as it was built with these tests.
/// </summary>
public sealed class ReadmeCommandTests
{
    private const string Run = "dotnet run --project src/PatternShop.Web";
    private const string New = "nine new willow baskets";
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(5);

    [Fact]
    public void Every_command_of_the_readme_is_known_to_these_tests() =>
        Assert.Equal(["", "help", "passphrase EMAIL", "public-address URL", "render FILE… --out DIR"], Commands().Order(StringComparer.Ordinal));

    [Fact]
    public async Task Render_finds_files_and_folder_from_where_its_caller_stands()
    {
        using var folder = new Folder();
        var (first, second) = (Relative(SamplePages.File("kestrel")), Relative(SamplePages.File("first-steps")));
        var made = Relative(folder["made"]);
        var done = await RunAsync("", "render FILE… --out DIR", ("FILE…", $"{first} {second}"), ("DIR", made));
        Assert.Equal((0, ""), (done.Code, done.Errors));
        Assert.Equal(10, folder.Names.Count);
        Assert.Contains(Path.Combine(made, "kestrel.a4.pdf") + "\n", done.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Help_tells_the_commands()
    {
        var done = await RunAsync("", "help");
        Assert.Equal((0, ""), (done.Code, done.Errors));
        Assert.Contains("render FILE… --out DIR", done.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_operator_names_the_data_folder_from_where_they_stand()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var data = " --data " + Relative(shop.DataFolder);
        var address = await RunAsync("", "public-address URL", data, ("URL", "https://patterns.example.org"));
        Assert.Equal((0, ""), (address.Code, address.Errors));
        Assert.Equal("https://patterns.example.org", await shop.Makers.PublicAddressAsync(TestContext.Current.CancellationToken));
        var passphrase = await RunAsync(New + "\n", "passphrase EMAIL", data, ("EMAIL", TestShop.Email));
        Assert.Equal((0, ""), (passphrase.Code, passphrase.Errors));
        Assert.Equal("/studio", (await shop.SignInAsync(maker, passphrase: New)).Location);
        maker.Dispose();
    }

    /// <summary>Where the server keeps things does not hang on where it was called from: its folder is the project's.</summary>
    [Fact]
    public async Task The_server_finds_its_pages_files_and_its_own_folder()
    {
        using var folder = new Folder();
        var data = Path.GetRelativePath(Checkout.Path("src/PatternShop.Web"), folder["data"]);
        using var process = Start("", "", ("PatternShop__DataFolder", data), ("Kestrel__Endpoints__Http__Url", "http://127.0.0.1:0"));
        try
        {
            var server = await RunningServer.HearAsync(process, isNew: true);
            using var visitor = new Visitor(server.Address);
            Assert.Equal(HttpStatusCode.OK, (await visitor.GetAsync("/")).Status);
            Assert.Equal(HttpStatusCode.OK, (await visitor.GetAsync("/css/public.css")).Status);
            Assert.Contains(Path.Combine("data", "patternshop.db"), folder.Names, StringComparer.Ordinal);
            Assert.Equal(0, await server.StopAsync());
        }
        finally
        {
            Stop(process);
        }
    }

    private static List<string> Commands() =>
    [
        .. from line in File.ReadAllLines(Checkout.Path("README.md"))
           where line.StartsWith(Run, StringComparison.Ordinal)
           select line[Run.Length..].Split('#')[0].Trim() is ['-', '-', ' ', .. var command] ? command : "",
    ];

    private static Task<(int Code, string Output, string Errors)> RunAsync(string input, string command, params (string Name, string Value)[] typed) => RunAsync(input, command, "", typed);

    private static async Task<(int Code, string Output, string Errors)> RunAsync(string input, string command, string options, params (string Name, string Value)[] typed)
    {
        Assert.Contains(command, Commands(), StringComparer.Ordinal);
        var line = typed.Aggregate(command, (text, word) => text.Replace(word.Name, word.Value, StringComparison.Ordinal)) + options;
        using var process = Start(line, input);
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        patience.CancelAfter(Patience);
        try
        {
            var (output, errors) = (process.StandardOutput.ReadToEndAsync(patience.Token), process.StandardError.ReadToEndAsync(patience.Token));
            await process.WaitForExitAsync(patience.Token);
            return (process.ExitCode, await output, await errors);
        }
        finally
        {
            Stop(process);
        }
    }

    private static Process Start(string command, string input, params (string Name, string Value)[] variables)
    {
        var words = $"{Run} {(command.Length == 0 ? "" : "-- " + command)}".Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var start = new ProcessStartInfo(words[0], words[1..])
        {
            WorkingDirectory = Checkout.Top,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        foreach (var (name, value) in (IEnumerable<(string, string)>)[("Configuration", Built), ("CustomAfterMicrosoftCommonTargets", NoBuild), ("MSBUILDDISABLENODEREUSE", "1"), ("DOTNET_CLI_USE_MSBUILD_SERVER", "0"), .. variables])
        {
            start.Environment[name] = value;
        }

        var process = Process.Start(start)!;
        process.StandardInput.Write(input);
        process.StandardInput.Close();
        return process;
    }

    /// <summary>Release or Debug, as these tests were built.</summary>
    private static string Built => new DirectoryInfo(AppContext.BaseDirectory).Parent!.Name;

    /// <summary>Takes the place of the targets "Restore" and "Build": <c>dotnet run</c> has no settings for that, only options.</summary>
    private static string NoBuild => Checkout.Path("tests/PatternShop.Web.Tests/Commands/NoBuild.targets");

    private static string Relative(string path) => Path.GetRelativePath(Checkout.Top, path);

    // what it has started goes with it
    private static void Stop(Process process)
    {
        if (!process.HasExited)
        {
            process.Kill(entireProcessTree: true);
        }
    }
}
