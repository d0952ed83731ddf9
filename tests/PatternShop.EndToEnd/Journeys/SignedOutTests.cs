using Microsoft.Playwright;
using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>A workbench that is open in another window is over when the maker signs out.</summary>
public sealed class SignedOutTests(Stage stage, MakerBench bench) : Journey(stage), IClassFixture<MakerBench>
{
    private const int Size = 8;
    private static readonly LocatorAssertionsToHaveCountOptions Soon = new() { Timeout = 5_000 };

    protected override ServerProcess Server => bench.Server;

    [Fact]
    public async Task Another_window_is_shown_nothing_more_says_so_and_keeps_what_is_drawn_there()
    {
        var (here, there) = (await OpenAsync(Reader.Desk), await OpenAsync(Reader.Desk));
        await bench.EnterAsync(here);
        await bench.EnterAsync(there);
        var line = new Line(there.Page);
        var old = new EditorPage(there);
        await old.BeginAsync("Two windows", Size, Size);
        await old.PlainEdgesAsync();
        await old.DragAsync(Size, Size, (1, 1), (1, 3));
        await old.SavedAsync();
        var address = new Uri(there.Page.Url).AbsolutePath;

        await here.GoAsync("/studio");
        await here.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Sign out" }).ClickAsync();
        await Assertions.Expect(there.Page.Locator(".stop[role=alert]")).ToHaveCountAsync(1, Soon);
        await Assertions.Expect(there.Page.Locator(".stop")).ToContainTextAsync("You’re signed out, so this page shows and saves nothing new.");
        await line.ClosedAsync();
        var (frames, picture) = (line.Frames, await old.PictureAsync());

        await SignInAsync(here, address);
        var editor = new EditorPage(here);
        await editor.SavedAsync();
        await editor.DragAsync(Size, Size, (2, 1), (2, 5));
        await editor.SavedAsync();
        await RowsAsync(here, "over 3, under 5", "under 3, over 5");
        Assert.Equal(picture, await old.PictureAsync());
        Assert.Equal(frames, line.Frames);
        await RowsAsync(there, "over 3, under 5", "under 8");

        await old.DragAsync(Size, Size, (3, 1), (3, 7));
        await Assertions.Expect(there.Page.Locator("[data-saving]")).ToHaveTextAsync("signed out: not saved, kept in this browser");
        Assert.Equal(frames, line.Frames);
        await there.Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Sign in again" }).ClickAsync();
        await SignInAsync(there);
        await old.SavedAsync();
        await RowsAsync(there, "over 3, under 5", "under 3, over 5", "over 7, under 1");
    }

    private static async Task SignInAsync(Visit visit, string address)
    {
        await visit.GoAsync(address);
        await SignInAsync(visit);
    }

    private static async Task SignInAsync(Visit visit)
    {
        await visit.Page.GetByLabel("E-mail").FillAsync(SetUp.Email);
        await visit.Page.GetByLabel("Passphrase").FillAsync(SetUp.Passphrase);
        await visit.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Sign in" }).ClickAsync();
    }

    private static async Task RowsAsync(Visit visit, params string[] rows)
    {
        foreach (var (at, words) in rows.Index())
        {
            await Assertions.Expect(visit.Page.Locator("td.runs").Nth(at)).ToHaveTextAsync(words);
        }
    }

    /// <summary>The connection of a workbench, as its browser sees it.</summary>
    private sealed class Line
    {
        private readonly TaskCompletionSource _closed = new(TaskCreationOptions.RunContinuationsAsynchronously);
        private int _frames;

        public Line(IPage page) => page.WebSocket += (_, socket) =>
        {
            socket.FrameReceived += (_, _) => Interlocked.Increment(ref _frames);
            socket.Close += (_, _) => _closed.TrySetResult();
        };

        /// <summary>How often the server has sent something.</summary>
        public int Frames => Volatile.Read(ref _frames);

        public Task ClosedAsync() => _closed.Task.WaitAsync(TimeSpan.FromMinutes(1), TestContext.Current.CancellationToken);
    }
}
