namespace PatternShop.Web;

/// <summary>What the program does when it is called: a command by its name, or the server.</summary>
internal static class CommandLine
{
    public const int Done = 0;
    public const int Failed = 1;
    public const int BadUse = 2;

    private const string Help = """
        Without a command: starts the server. Settings are given as --NAME VALUE or in the environment:
          --urls http://localhost:5080                  where to listen
          --PatternShop:DataFolder DIR                  where everything is kept, from the program's own folder (PatternShop__DataFolder)
          --PatternShop:PublicAddress URL               where readers find the shop (PatternShop__PublicAddress)
          --PatternShop:KnownProxies ADDRESS,NETWORK    proxies in front whose headers are believed (PatternShop__KnownProxies)
          --Logging:LogLevel:Default LEVEL              what is logged: Debug, Information, Warning, Error or None
          --Logging:Console:FormatterName FORMAT        how it is logged: simple (one line an event) or json

        Commands:
          render FILE… --out DIR                makes directions, facts, chart and printables of pattern files
          passphrase EMAIL [--data DIR]         gives a maker a new passphrase, read from standard input
          public-address [URL] [--data DIR]     shows, or sets and checks, where readers find the shop
          health [URL]                          asks a server on this machine whether it is well
          help                                  shows this
        """;

    public static async Task<int> RunAsync(string[] args, TextReader input, TextWriter output, TextWriter errors)
    {
        switch (args)
        {
            case ["render", .. var rest]:
                return await RenderCommand.RunAsync(rest, output, errors);
            case ["passphrase", .. var rest]:
                return await PassphraseCommand.RunAsync(rest, input, output, errors);
            case ["public-address", .. var rest]:
                return await PublicAddressCommand.RunAsync(rest, output, errors);
            case ["health", .. var rest]:
                return await HealthCommand.RunAsync(rest, output, errors);
            case ["help" or "--help" or "-h", ..]:
                await output.WriteLineAsync(Help);
                return Done;
            case [[not ('-' or '/'), ..] unknown, ..] when !unknown.Contains('=', StringComparison.Ordinal):
                await errors.WriteLineAsync($"There is no command \"{unknown}\". These there are:\n\n{Help}");
                return BadUse;
            default:
                return await PatternShopHost.RunAsync(args, errors);
        }
    }
}
