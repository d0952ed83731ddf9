using System.Diagnostics;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>Those who need the published program share it.</summary>
[CollectionDefinition(nameof(PublishedServer))]
public sealed class PublishedCollection : ICollectionFixture<PublishedServer>;

/// <summary>The steps of the Dockerfile, done on this machine once: the tree copied, restored and published as its RUN says.</summary>
public sealed class PublishedServer : IAsyncLifetime
{
    private readonly DirectoryInfo _top = Directory.CreateTempSubdirectory("published");

    public string Output => Path.Combine(_top.FullName, "published");

    public string NewDataFolder(string name) => Path.Combine(_top.FullName, name);

    public async ValueTask InitializeAsync()
    {
        var source = Path.Combine(_top.FullName, "source");
        foreach (var file in Checkout.Files)
        {
            var copy = Path.Combine(source, file);
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(Checkout.Path(file), copy);
        }

        var build = Dockerfile.Read().TakeWhile(instruction => instruction.Word != "ENTRYPOINT").First(instruction => instruction.Word == "RUN");
        foreach (var step in build.Text.Split("&&", StringSplitOptions.TrimEntries))
        {
            var words = step.Replace("/published", Output, StringComparison.Ordinal).Split(' ', StringSplitOptions.RemoveEmptyEntries);
            using var process = Start(words[0], words[1..], source, []);
            var said = await process.StandardOutput.ReadToEndAsync();
            await process.WaitForExitAsync();
            Assert.True(process.ExitCode == 0, said);
        }

        Directory.Delete(source, recursive: true);
    }

    public ValueTask DisposeAsync()
    {
        _top.Delete(recursive: true);
        return ValueTask.CompletedTask;
    }

    /// <summary>Runs the published program with the image's variables; those given come last.</summary>
    public Process Run(IReadOnlyList<string> arguments, params (string Name, string Value)[] variables)
    {
        var image = Dockerfile.Variables(Dockerfile.Final(Dockerfile.Read())).Select(variable => (variable.Key, variable.Value)).Where(variable => variable.Key != "ASPNETCORE_HTTP_PORTS");
        return Start("dotnet", [Path.Combine(Output, "PatternShop.Web.dll"), .. arguments], _top.FullName, [.. image, .. variables]);
    }

    /// <summary>Starts the published program on a data folder and waits until it listens.</summary>
    internal Task<RunningServer> RunningAsync(string data, bool isNew) =>
        RunningServer.HearAsync(Run(["--urls", "http://127.0.0.1:0"], ("PatternShop__DataFolder", data)), isNew);

    private static Process Start(string program, IReadOnlyList<string> arguments, string folder, IReadOnlyList<(string Name, string Value)> variables)
    {
        var start = new ProcessStartInfo(program, arguments) { WorkingDirectory = folder, RedirectStandardOutput = true, UseShellExecute = false };
        // no build node may outlive the test (the compiler server that the build has warmed ends by itself); what the analyzers have to say of these files they said when the tests were built
        foreach (var (name, value) in (IEnumerable<(string, string)>)[("MSBUILDDISABLENODEREUSE", "1"), ("DOTNET_CLI_USE_MSBUILD_SERVER", "0"), ("RunAnalyzers", "false"), .. variables])
        {
            start.Environment[name] = value;
        }

        return Process.Start(start)!;
    }
}
