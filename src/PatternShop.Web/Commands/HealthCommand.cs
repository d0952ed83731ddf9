namespace PatternShop.Web;

/// <summary><c>health [URL]</c>: asks a server on this machine whether it is well. The container's health check runs it.</summary>
internal static class HealthCommand
{
    // one second less than the container engine allows
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(9);

    public static async Task<int> RunAsync(string[] args, TextWriter output, TextWriter errors)
    {
        if (args.Length > 1 || !Uri.TryCreate(args is [var typed] ? typed : "http://localhost:8080", UriKind.Absolute, out var address) || !address.IsLoopback || address.Scheme is not ("http" or "https"))
        {
            await errors.WriteLineAsync("usage: health [URL]\nURL is an address of this machine, http://localhost:8080 unless said otherwise.");
            return CommandLine.BadUse;
        }

        return await AskAsync(address, output, errors);
    }

    public static async Task<int> AskAsync(Uri address, TextWriter output, TextWriter errors)
    {
        using var client = new HttpClient { Timeout = Patience };
        try
        {
            using var answer = await client.GetAsync(new Uri(address, Health.Ready));
            if (answer.IsSuccessStatusCode)
            {
                await output.WriteLineAsync("The server there is well.");
                return CommandLine.Done;
            }

            await errors.WriteLineAsync(await ReasonAsync(answer));
        }
        catch (Exception failure) when (failure is HttpRequestException or TaskCanceledException)
        {
            await errors.WriteLineAsync($"No server answered there: {failure.Message}");
        }

        return CommandLine.Failed;
    }

    // only a server of ours gives its reason as plain text; what stands in front of it sends pages
    private static async Task<string> ReasonAsync(HttpResponseMessage answer)
    {
        var said = answer.Content.Headers.ContentType?.MediaType == "text/plain" ? await answer.Content.ReadAsStringAsync() : "";
        return FormattableString.Invariant($"The server there is not well: it answered {(int)answer.StatusCode}{(said.Length is > 0 and < 200 ? $" ({said})" : "")}.");
    }
}
