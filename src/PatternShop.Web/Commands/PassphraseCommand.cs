using PatternShop.Store;

namespace PatternShop.Web;

/// <summary><c>passphrase EMAIL</c>: gives a maker a new passphrase, the first line of standard input, and ends their sessions.</summary>
internal static class PassphraseCommand
{
    public static async Task<int> RunAsync(string[] args, TextReader input, TextWriter output, TextWriter errors)
    {
        if (OperatorStore.Parse(args) is not { Words: [var email], Folder: var folder })
        {
            await errors.WriteLineAsync("usage: passphrase EMAIL [--data DIR]\nReads the new passphrase from standard input, one line.");
            return CommandLine.BadUse;
        }

        return await OperatorStore.RunAsync(folder, errors, async services =>
        {
            var makers = services.GetRequiredService<Makers>();
            await output.WriteLineAsync($"New passphrase for {email} (one line):");
            return await makers.SetPassphraseAsync(email, await BoundedReading.LineAsync(input, MakerRules.PassphraseMost)) switch
            {
                SetPassphraseResult.Done => await SayAsync(output, $"Done. The maker is signed out everywhere.\n{await InviteAsync(services, email)}", CommandLine.Done),
                SetPassphraseResult.UnknownMaker => await SayAsync(errors, $"No maker here has the e-mail address {email}.", CommandLine.Failed),
                SetPassphraseResult.Busy => await SayAsync(errors, "Too many passphrases are being checked. Try again in a moment.", CommandLine.Failed),
                SetPassphraseResult.Refused refused => await SayAsync(errors, string.Join('\n', refused.Problems.Select(problem => $"{problem.What} {problem.Remedy}")), CommandLine.Failed),
                var other => throw new InvalidOperationException(other.GetType().Name),
            };
        });
    }

    // strangers who keep trying can use up everybody's tries, but not those of a browser that is known
    private static async Task<string> InviteAsync(IServiceProvider services, string email)
    {
        var maker = await services.GetRequiredService<Makers>().IdOfAsync(email) ?? throw new InvalidOperationException("The maker has gone.");
        var shop = await services.GetRequiredService<ShopAddress>().CurrentAsync(CancellationToken.None) ?? "";
        return $"If signing in says that there were too many tries, open this first, within an hour:\n{shop}{services.GetRequiredService<KnownBrowsers>().Invite(maker)}";
    }

    private static async Task<int> SayAsync(TextWriter where, string text, int code)
    {
        await where.WriteLineAsync(text);
        return code;
    }
}
