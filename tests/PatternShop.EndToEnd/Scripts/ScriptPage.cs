using Microsoft.Playwright;
using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>A browser page from which the project's script modules can be imported, without any server.</summary>
public sealed class ScriptPage(Stage stage) : IAsyncLifetime
{
    private const string Site = "http://scripts.example/";
    private IPage? _page;

    public async ValueTask InitializeAsync()
    {
        _page = await stage.Browser.NewPageAsync();
        await _page.RouteAsync(Site + "**", AnswerAsync);
        await _page.GotoAsync(Site);
    }

    public async ValueTask DisposeAsync()
    {
        if (_page is not null)
        {
            await _page.Context.DisposeAsync();
        }
    }

    /// <summary>Runs the body of an async function in which <c>editor('line')</c> imports a module of the editor, and <c>random(7)</c> makes a repeatable source of numbers from 0 to 1.</summary>
    public Task<T> RunAsync<T>(string body) => _page!.EvaluateAsync<T>($$"""
        async () => {
          const editor = name => import(`/scripts/editor/${name}.js`);
          const random = seed => () => {
            seed = seed + 0x6D2B79F5 | 0;
            let t = Math.imul(seed ^ seed >>> 15, 1 | seed);
            t = t + Math.imul(t ^ t >>> 7, 61 | t) ^ t;
            return ((t ^ t >>> 14) >>> 0) / 4294967296;
          };
          const storage = (most = Infinity) => {
            const held = new Map();
            return {
              get length() { return held.size; },
              key: at => [...held.keys()][at] ?? null,
              getItem: key => held.get(key) ?? null,
              removeItem: key => { held.delete(key); },
              setItem: (key, value) => {
                if (held.size >= most) { throw new DOMException('full', 'QuotaExceededError'); }
                held.set(key, value);
              },
            };
          };
          {{body}}
        }
        """);

    private static Task AnswerAsync(IRoute route)
    {
        var path = new Uri(route.Request.Url).AbsolutePath;
        return path == "/"
            ? route.FulfillAsync(new RouteFulfillOptions { ContentType = "text/html", Body = "<!DOCTYPE html><title>scripts</title>" })
            : route.FulfillAsync(new RouteFulfillOptions { ContentType = "text/javascript", Path = Path.Combine(Top, "wwwroot-assets" + path) });
    }

    private static string Top { get; } = FindTop();

    private static string FindTop()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "PatternShop.sln")))
        {
            folder = folder.Parent ?? throw new InvalidOperationException("The tests were built outside the project.");
        }

        return folder.FullName;
    }
}
