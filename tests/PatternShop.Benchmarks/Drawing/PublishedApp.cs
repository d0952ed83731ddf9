using System.Diagnostics;
using PatternShop.Tests.Shared;

namespace PatternShop.Benchmarks;

/// <summary>The program as it is published, in a folder that goes with it.</summary>
internal sealed class PublishedApp : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("published");

    public string Program => Path.Combine(_folder.FullName, "PatternShop.Web.dll");

    public static async Task<PublishedApp> MakeAsync()
    {
        var app = new PublishedApp();
        string[] arguments = ["publish", Checkout.Path("src/PatternShop.Web"), "-c", "Release", "-o", app._folder.FullName, "-v", "q"];
        using var publish = Process.Start(new ProcessStartInfo("dotnet", arguments) { WorkingDirectory = Checkout.Top, RedirectStandardOutput = true, UseShellExecute = false })!;
        var said = await publish.StandardOutput.ReadToEndAsync();
        await publish.WaitForExitAsync();
        return publish.ExitCode == 0 ? app : throw new InvalidOperationException(said);
    }

    public void Dispose() => _folder.Delete(recursive: true);
}
