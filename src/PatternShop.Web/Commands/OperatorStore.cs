using PatternShop.Store;

namespace PatternShop.Web;

/// <summary>Opens the store for a command of the operator, beside a server that may be running.</summary>
internal static class OperatorStore
{
    private const string DataOption = "--data";

    /// <summary>Takes <c>--data DIR</c> out of the arguments; null when the folder is missing behind it.</summary>
    public static (string? Folder, IReadOnlyList<string> Words)? Parse(string[] args)
    {
        var at = Array.IndexOf(args, DataOption);
        if (at < 0)
        {
            return (null, args);
        }

        return at + 1 < args.Length ? (args[at + 1], [.. args[..at], .. args[(at + 2)..]]) : null;
    }

    /// <summary>Does something with the accounts of a data folder that is there already: that of the option, else that of the server's settings.</summary>
    public static async Task<int> RunAsync(string? folder, TextWriter errors, Func<IServiceProvider, Task<int>> act)
    {
        var builder = PatternShopHost.Builder(folder is null ? [] : [$"--PatternShop:DataFolder={Path.GetFullPath(folder)}"]);
        if (HostSettings.Read(builder.Configuration, builder.Environment.ContentRootPath, out var problem) is not { } settings)
        {
            await errors.WriteLineAsync(problem);
            return CommandLine.BadUse;
        }

        if (!Directory.Exists(settings.DataFolder))
        {
            await errors.WriteLineAsync($"There is no data folder {settings.DataFolder}. Name it with {DataOption} DIR.");
            return CommandLine.BadUse;
        }

        await using var services = new ServiceCollection().AddAccountStore(settings).BuildServiceProvider();
        try
        {
            await services.GetRequiredService<StoreStart>().OpenAsync();
            return await act(services);
        }
        catch (StoreException failure)
        {
            await errors.WriteLineAsync($"{settings.DataFolder}: {failure.Message}");
            return CommandLine.Failed;
        }
    }
}
