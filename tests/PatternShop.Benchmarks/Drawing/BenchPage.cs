using System.Globalization;
using System.Text;
using Microsoft.Playwright;

namespace PatternShop.Benchmarks;

/// <summary>A window on the editor that takes times. The page itself knows nothing of it: what listens to the chart is wrapped before it does.</summary>
internal sealed class BenchPage(IPage page)
{
    private const float Patience = 120_000;

    private const string Code = """
        (() => {
          const draws = [];
          let drawn = null;
          const { fill, fillRect } = CanvasRenderingContext2D.prototype;
          Object.assign(CanvasRenderingContext2D.prototype, {
            fill(...what) { fill.apply(this, what); drawn = performance.now(); },
            fillRect(...what) { fillRect.apply(this, what); drawn = performance.now(); },
          });
          const { addEventListener: add } = EventTarget.prototype;
          EventTarget.prototype.addEventListener = function (type, listener, options) {
            const draw = this instanceof HTMLCanvasElement && ['pointerdown', 'pointermove', 'pointerrawupdate'].includes(type);
            return add.call(this, type, draw ? event => {
              const before = performance.now();
              drawn = null;
              listener.call(this, event);
              if (drawn !== null) { draws.push([drawn - event.timeStamp, drawn - before, type]); }
            } : listener, options);
          };
          const bytes = text => new TextEncoder().encode(text ?? '').length;
          window.bench = {
            take: () => draws.splice(0),
            text: 0,
            watchText() {
              new MutationObserver(changes => changes.forEach(({ type, target, attributeName, addedNodes }) => {
                this.text += type === 'characterData' ? bytes(target.data)
                  : type === 'attributes' ? bytes(target.getAttribute(attributeName))
                    : [...addedNodes].reduce((sum, node) => sum + bytes(node.textContent), 0);
              })).observe(document.querySelector('.bench'), { subtree: true, childList: true, characterData: true, attributes: true });
            },
            // from the newest key to the next change of an element; what comes without a key before it is not counted
            told: {}, key: null,
            watch(name, selector, options) {
              this.told[name] = { waits: [], times: [] };
              let seen = null;
              addEventListener('keydown', event => { this.key = event.timeStamp; seen = null; }, { capture: true });
              new MutationObserver(() => {
                this.told[name].times.push(performance.now());
                if (this.key !== null && seen !== this.key) {
                  seen = this.key;
                  this.told[name].waits.push(performance.now() - this.key);
                }
              }).observe(document.querySelector(selector), options);
            },
          };
        })();
        """;

    public IPage Page => page;

    public ILocator Stage => page.Locator("[data-motif]");

    /// <summary>The address of the pattern.</summary>
    public string Address => new Uri(page.Url).AbsolutePath;

    public static async Task<BenchPage> OpenAsync(IBrowserContext context)
    {
        var page = await context.NewPageAsync();
        await page.AddInitScriptAsync(Code);
        return new BenchPage(page);
    }

    public async Task GoAsync(string address)
    {
        await page.GotoAsync(address, new PageGotoOptions { Timeout = Patience });
        await SavedAsync();
    }

    public Task SavedAsync() => Assertions.Expect(page.Locator("[data-saving]")).ToHaveTextAsync("saved", new LocatorAssertionsToHaveTextOptions { Timeout = Patience });

    /// <summary>Makes a pattern of cells without order and some strokes, as a page that is gone would have left them behind.</summary>
    /// <param name="side">Ends and rows of the motif.</param>
    /// <param name="steps">Steps of undo.</param>
    public async Task BeginAsync(string title, int side, int steps)
    {
        await page.GotoAsync("/studio/new");
        await page.GetByLabel("Title").FillAsync(title);
        var number = side.ToString(CultureInfo.InvariantCulture);
        await page.GetByLabel("Ends in the motif").FillAsync(number);
        await page.GetByLabel("Rows in the motif").FillAsync(number);
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Begin" }).ClickAsync();
        await SavedAsync();
        await page.EvaluateAsync(
            """
            ({ side, steps }) => {
              let seed = 7;
              const random = () => (seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0) / 4294967296;
              const id = location.pathname.split('/').pop(), b36 = value => value.toString(36);
              const leave = (sequence, text) => localStorage.setItem(`patternshop:stroke:${id}:gone:${sequence}`, JSON.stringify({ client: 'gone', sequence, text, cells: 1 }));
              const size = `${b36(side)}.${b36(side)}`;
              const cells = btoa(String.fromCharCode(...Array.from({ length: side * Math.ceil(side / 8) }, () => 256 * random())));
              leave(1, `${size} c0:0-${b36(side - 1)}:${b36(side - 1)}=${size}:${cells}`);
              for (let step = 2; step <= steps; step++) {
                const end = Math.floor(random() * (side - 4));
                leave(step, `${size} ${random() < 0.5 ? 'o' : 'u'}${b36(Math.floor(random() * side))}:${b36(end)}-${b36(end + 3)}`);
              }
            }
            """,
            new { side, steps });
        await page.ReloadAsync();
        await page.WaitForFunctionAsync("() => localStorage.length === 0", null, new PageWaitForFunctionOptions { Timeout = Patience });
        await SavedAsync();
    }

    public async Task SlowAsync(int times) =>
        await (await page.Context.NewCDPSessionAsync(page)).SendAsync("Emulation.setCPUThrottlingRate", new Dictionary<string, object>(StringComparer.Ordinal) { ["rate"] = times });

    /// <summary>One stroke of the mouse over what is in sight of the chart.</summary>
    /// <param name="turn">Which one; others go elsewhere.</param>
    /// <param name="moves">Samples after the first.</param>
    public async Task StrokeAsync(int turn, int moves)
    {
        var box = await page.Locator("[data-motif] canvas").BoundingBoxAsync() ?? throw new InvalidOperationException("The chart is not in sight.");
        (float X, float Y) At(int move) => (
            box.X + 60 + (((turn * 83) + (move * 23)) % (box.Width - 120)),
            box.Y + 30 + (((turn * 59) + (move * 9)) % (box.Height - 80)));
        await page.Mouse.MoveAsync(At(0).X, At(0).Y);
        await page.Mouse.DownAsync();
        for (var move = 1; move <= moves; move++)
        {
            await page.Mouse.MoveAsync(At(move).X, At(move).Y);
        }

        await page.Mouse.UpAsync();
    }

    /// <summary>What drawing took since it was asked for last: from each event to the end of its draw call, in milliseconds.</summary>
    public async Task<double[]> DrawsAsync() => await page.EvaluateAsync<double[]>("() => bench.take().map(([wait]) => wait)");

    /// <summary>What each call of that was by itself.</summary>
    public async Task<string> DrawsInDetailAsync() => await page.EvaluateAsync<string>("() => bench.take().map(([wait, own, type]) => `${type} ${wait.toFixed(1)} ${own.toFixed(1)}`).join('; ')");

    public static int Bytes(IWebSocketFrame frame) => frame.Binary?.Length ?? Encoding.UTF8.GetByteCount(frame.Text ?? "");
}
