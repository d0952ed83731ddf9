using PatternShop.Store;

namespace PatternShop.Web;

/// <summary><c>public-address [URL]</c>: shows where readers find the shop, or sets it and checks what can be checked from here.</summary>
internal static class PublicAddressCommand
{
    public static async Task<int> RunAsync(string[] args, TextWriter output, TextWriter errors)
    {
        if (OperatorStore.Parse(args) is not { Words: [] or [_] } parsed)
        {
            await errors.WriteLineAsync("usage: public-address [URL] [--data DIR]\nWithout URL: shows the address. With URL: sets it.");
            return CommandLine.BadUse;
        }

        return await OperatorStore.RunAsync(parsed.Folder, errors, services => parsed.Words is [var address]
            ? SetAsync(address, services, output, errors)
            : ShowAsync(services, output, errors));
    }

    private static async Task<int> ShowAsync(IServiceProvider services, TextWriter output, TextWriter errors)
    {
        if (await services.GetRequiredService<ShopAddress>().CurrentAsync(CancellationToken.None) is not { } address)
        {
            await errors.WriteLineAsync("No public address is set. Set it with: public-address https://patterns.example.org");
            return CommandLine.Failed;
        }

        await output.WriteLineAsync(address);
        return await CheckAsync(address, output, errors);
    }

    private static async Task<int> SetAsync(string typed, IServiceProvider services, TextWriter output, TextWriter errors)
    {
        var makers = services.GetRequiredService<Makers>();
        if (await makers.SetPublicAddressAsync(typed) is { } problem)
        {
            await errors.WriteLineAsync($"{problem.What} {problem.Remedy}");
            return CommandLine.Failed;
        }

        var kept = await makers.PublicAddressAsync();
        await output.WriteLineAsync($"The public address is {kept}. Versions issued from now on carry it.");
        if (services.GetRequiredService<HostSettings>().PublicAddress is { } overruled && overruled != kept)
        {
            await errors.WriteLineAsync($"But the server's settings say {overruled}, and they come first. Change them, or leave PatternShop:PublicAddress out.");
            return CommandLine.Failed;
        }

        return await CheckAsync(kept!, output, errors);
    }

    // Other addresses are the operator's to open in a browser: this program calls nobody but this machine.
    private static async Task<int> CheckAsync(string address, TextWriter output, TextWriter errors)
    {
        if (new Uri(address).IsLoopback)
        {
            return await HealthCommand.AskAsync(new Uri(address), output, errors);
        }

        await output.WriteLineAsync("Open it in a browser to see that it leads here.");
        return CommandLine.Done;
    }
}
