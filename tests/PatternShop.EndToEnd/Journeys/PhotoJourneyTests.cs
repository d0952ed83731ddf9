using System.Buffers.Binary;
using System.Collections.Concurrent;
using System.IO.Compression;
using Microsoft.Playwright;
using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>The maker's own words, a video and a photo go from the workbench to a reader without scripts, who sees whose they are.</summary>
public sealed class PhotoJourneyTests(Stage stage) : Journey(stage)
{
    private const int PageBytes = 100_000;
    private readonly DataFolder _data = new();
    private ServerProcess? _server;

    protected override ServerProcess Server => _server ?? throw new InvalidOperationException("There is no server yet.");

    public override async ValueTask InitializeAsync() => _server = await ServerProcess.StartAsync(_data);

    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        await Server.DisposeAsync();
        _data.Dispose();
    }

    [Fact]
    public async Task What_a_maker_says_and_shows_reaches_a_reader_marked_as_theirs()
    {
        var maker = await OpenAsync(Reader.Desk);
        await SetUp.DoAsync(maker, Server);
        var editor = new EditorPage(maker);
        await editor.BeginAsync("Lattice window", 8, 8);
        await maker.Page.GetByLabel("Your words for chart row 1").FillAsync("Beat gently.");
        await maker.Page.GetByLabel("Your words for chart row 1").BlurAsync();
        await maker.Page.GetByLabel("Address of a video").FillAsync("https://films.example/turn");
        await maker.Page.GetByLabel("What it shows").FillAsync("The turn");
        await maker.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Add the video" }).ClickAsync();
        await Assertions.Expect(maker.Page.GetByLabel("Video 1: address")).ToHaveValueAsync("https://films.example/turn");
        await editor.SavedAsync();
        Assert.Empty(await Axe.FindingsAsync(maker));
        await maker.Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Add photos" }).ClickAsync();
        await maker.Page.GetByLabel("Picture").SetInputFilesAsync(new FilePayload { Name = "sample.png", MimeType = "image/png", Buffer = Png(900, 600) });
        await maker.Page.GetByLabel("What is to be seen?").FillAsync("The woven sample");
        await maker.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Add the photo" }).ClickAsync();
        await Assertions.Expect(maker.Page.GetByAltText("The woven sample")).ToBeVisibleAsync();
        Assert.Empty(await Axe.FindingsAsync(maker));
        await maker.Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Back to the pattern" }).ClickAsync();
        await editor.SavedAsync();
        await editor.IssueAsync();

        var reader = await OpenAsync(Reader.Phone with { Script = false });
        await reader.GoAsync("/");
        await reader.Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Lattice window" }).ClickAsync();
        var own = reader.Page.GetByRole(AriaRole.Region, new PageGetByRoleOptions { Name = "In the maker's own words and pictures" });
        var photo = own.GetByAltText("The woven sample");
        await photo.ScrollIntoViewIfNeededAsync();
        await Assertions.Expect(photo).ToHaveJSPropertyAsync("naturalWidth", 400);
        await Assertions.Expect(own.GetByRole(AriaRole.Link, new LocatorGetByRoleOptions { Name = "The turn" })).ToHaveAttributeAsync("rel", "noopener noreferrer nofollow");
        await Assertions.Expect(own).ToContainTextAsync("video at films.example");
        await Assertions.Expect(reader.Page.Locator("#row-1 .own")).ToHaveTextAsync("Maker's note: Beat gently.");

        var looker = await OpenAsync(Reader.Phone);
        var sizes = new ConcurrentBag<Task<RequestSizesResult>>();
        looker.Page.RequestFinished += (_, request) => sizes.Add(request.SizesAsync());
        await looker.GoAsync(new Uri(reader.Page.Url).AbsolutePath);
        await looker.Page.GetByAltText("The woven sample").ScrollIntoViewIfNeededAsync();
        await Assertions.Expect(looker.Page.GetByAltText("The woven sample")).ToHaveJSPropertyAsync("naturalWidth", 400);
        await looker.Page.WaitForLoadStateAsync(LoadState.NetworkIdle);
        var large = await looker.Page.Locator("section.maker figure a").GetAttributeAsync("href");
        var transferred = sizes.ToArray();
        Assert.Equal(900, await looker.Page.EvaluateAsync<int>("async address => { const large = new Image(); large.src = address; await large.decode(); return large.naturalWidth; }", large));
        Assert.InRange((await Task.WhenAll(transferred)).Sum(size => (long)size.ResponseBodySize), 10_000, PageBytes);
        Assert.Empty(await Axe.FindingsAsync(looker));
        await looker.GoAsync(new Uri(looker.Page.Url).AbsolutePath + "/weave");
        await Assertions.Expect(looker.Page.Locator("#own")).ToHaveTextAsync("Maker's note: Beat gently.");
        Assert.Empty(await Axe.FindingsAsync(looker));
    }

    /// <summary>A picture of threads over and under (PNG 3rd edition: head, one packed part, end).</summary>
    private static byte[] Png(int width, int height)
    {
        var lines = new byte[height * (1 + (width * 3))];
        for (var y = 0; y < height; y++)
        {
            for (var x = 0; x < width; x++)
            {
                var over = ((x / 24) + (y / 24)) % 2 == 0;
                var at = (y * (1 + (width * 3))) + 1 + (x * 3);
                (lines[at], lines[at + 1], lines[at + 2]) = over ? ((byte)(180 + (x % 24)), (byte)90, (byte)50) : ((byte)235, (byte)(220 - (y % 24)), (byte)190);
            }
        }

        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Fastest, leaveOpen: true))
        {
            zlib.Write(lines);
        }

        byte[] head = [0, 0, 0, 0, 0, 0, 0, 0, 8, 2, 0, 0, 0];
        BinaryPrimitives.WriteInt32BigEndian(head, width);
        BinaryPrimitives.WriteInt32BigEndian(head.AsSpan(4), height);
        return [0x89, .. "PNG\r\n\u001a\n"u8, .. Part("IHDR"u8, head), .. Part("IDAT"u8, packed.ToArray()), .. Part("IEND"u8, [])];
    }

    private static byte[] Part(ReadOnlySpan<byte> name, byte[] content)
    {
        byte[] part = [0, 0, 0, 0, .. name, .. content, 0, 0, 0, 0];
        BinaryPrimitives.WriteInt32BigEndian(part, content.Length);
        var sum = uint.MaxValue;
        foreach (var one in part.AsSpan(4, content.Length + 4))
        {
            sum ^= one;
            for (var bit = 0; bit < 8; bit++)
            {
                sum = (sum & 1) == 0 ? sum >> 1 : (sum >> 1) ^ 0xEDB88320;
            }
        }

        BinaryPrimitives.WriteUInt32BigEndian(part.AsSpan(part.Length - 4), ~sum);
        return part;
    }
}
