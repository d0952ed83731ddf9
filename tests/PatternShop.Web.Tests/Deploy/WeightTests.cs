using System.Net;
using System.Net.Sockets;
using System.Text.RegularExpressions;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>What a first visit costs over the wire, headers and all, at the published program, with a chart of 100 × 100 cells that nothing makes smaller.</summary>
[Collection(nameof(PublishedServer))]
public sealed partial class WeightTests(PublishedServer published)
{
    private const int Kilobyte = 1000;
    private const int Size = 100;

    [Fact]
    public async Task A_first_visit_to_each_page_keeps_its_budget()
    {
        var data = published.NewDataFolder("weights");
        string page;
        string editor;
        await using (var shop = await IssuedShop.OpenAsync(Large("Old"), $"--PatternShop:DataFolder={data}"))
        {
            await shop.ReissueAsync(Large("Large") with { Motif = Large("Large").Motif.With(4, 4, !Large("Large").Motif[4, 4]) }, "");
            page = shop.Page;
            editor = $"/studio/patterns/{shop.Id}";
        }

        using var server = await published.RunningAsync(data, isNew: false);
        var along = await VisitAsync(server.Address, (await RedirectAsync(server.Address, page)) + "/weave");
        TestContext.Current.TestOutputHelper?.WriteLine($"weave-along: {along}");
        Assert.True(along.Bytes <= 60 * Kilobyte, $"weave-along: {along}");
        Assert.True(along.Scripts <= 15 * Kilobyte, $"its scripts: {along}");
        foreach (var address in new[] { "/", "/samples", await RedirectAsync(server.Address, page), (await RedirectAsync(server.Address, page)) + "/v/1/changes", "/samples/mountain-and-mirror" })
        {
            var visit = await VisitAsync(server.Address, address);
            TestContext.Current.TestOutputHelper?.WriteLine($"{address}: {visit}");
            Assert.True(visit.Bytes <= 100 * Kilobyte, $"{address}: {visit}");
            Assert.Equal(0, visit.Scripts);
        }

        await TheEditorAsync(server.Address, editor);
        Assert.Equal(0, await server.StopAsync());
    }

    // The words and cells of the pattern itself come over the connection afterwards.
    private static async Task TheEditorAsync(Uri server, string address)
    {
        using var maker = new Visitor(server);
        Assert.Equal("/studio", (await maker.FillAsync("/sign-in", "/sign-in", ("email", TestShop.Email), ("passphrase", TestShop.Passphrase))).Location);
        var editor = await VisitAsync(server, address, maker.Handler.CookieContainer);
        TestContext.Current.TestOutputHelper?.WriteLine($"editor: {editor}");
        Assert.InRange(editor.Bytes, 100 * Kilobyte, 350 * Kilobyte);
        Assert.InRange(editor.Requests, 40, 120);
    }

    // Every cell over or under by a fixed rule without a period: the same shapes, rows and words everywhere would pack too well.
    private static PatternDocument Large(string title)
    {
        var state = 12345u;
        bool Next()
        {
            state = (state * 1664525) + 1013904223;
            return (state & 0x8000_0000) != 0;
        }

        var rows = Enumerable.Range(0, Size).Select(_ => string.Concat(Enumerable.Range(0, Size).Select(_ => Next() ? 'x' : '.')));
        return Charts.Document(string.Join('/', rows), floating: Charts.AlikeUnder, steps: [new Repeat(3, [new ChartRows(1, Size, 1)]), new ChartRows(1, 1, 1)]) with { Title = title };
    }

    private static async Task<string> RedirectAsync(Uri server, string address)
    {
        using var visitor = new Visitor(server);
        var answer = await visitor.GetAsync(address);
        return answer.Status == HttpStatusCode.OK ? address : answer.Location!;
    }

    // Everything that the page and what it loads refer to, each fetched once over a connection whose bytes are counted.
    private static async Task<Weight> VisitAsync(Uri server, string address, CookieContainer? cookies = null)
    {
        var wire = new Wire();
        using var client = wire.Client(server, cookies);
        var (seen, due) = (new HashSet<string>(StringComparer.Ordinal), new Queue<string>([address]));
        var weight = new Weight(0, 0, 0);
        while (due.TryDequeue(out var next))
        {
            if (!seen.Add(next))
            {
                continue;
            }

            var before = wire.Received;
            using var request = new HttpRequestMessage(HttpMethod.Get, next);
            request.Headers.TryAddWithoutValidation("Accept-Encoding", "gzip, deflate, br, zstd");
            using var answer = await client.SendAsync(request, TestContext.Current.CancellationToken);
            Assert.Equal((next, HttpStatusCode.OK), (next, answer.StatusCode));
            var (text, packed) = await TextAsync(answer);
            var bytes = (int)(wire.Received - before);
            var isScript = answer.Content.Headers.ContentType?.MediaType == "text/javascript";
            Assert.True(!isScript || answer.Content.Headers.ContentEncoding.Count == 1, $"{next} is not compressed");
            weight = new Weight(weight.Bytes + bytes, weight.Scripts + (isScript ? packed : 0), weight.Requests + 1);
            foreach (var other in Needed(text, next, answer.Content.Headers.ContentType?.MediaType ?? ""))
            {
                due.Enqueue(other);
            }
        }

        return weight;
    }

    private static async Task<(string Text, int Packed)> TextAsync(HttpResponseMessage answer)
    {
        var bytes = await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken);
        await using var packed = new MemoryStream(bytes);
        await using Stream stream = answer.Content.Headers.ContentEncoding.SingleOrDefault() switch
        {
            "br" => new System.IO.Compression.BrotliStream(packed, System.IO.Compression.CompressionMode.Decompress),
            "gzip" => new System.IO.Compression.GZipStream(packed, System.IO.Compression.CompressionMode.Decompress),
            _ => packed,
        };
        using var reader = new StreamReader(stream);
        return (await reader.ReadToEndAsync(TestContext.Current.CancellationToken), bytes.Length);
    }

    private static IEnumerable<string> Needed(string text, string address, string type)
    {
        var found = type switch
        {
            "text/html" => Element().Matches(text),
            "text/css" => CssAddress().Matches(text),
            "text/javascript" => Import().Matches(text),
            _ => (IEnumerable<Match>)[],
        };
        var from = text.Contains("<base href=\"/\"", StringComparison.Ordinal) ? "/" : address;
        foreach (var match in found)
        {
            // an address elsewhere would be fetched from there and fail
            var whole = new Uri(new Uri("http://own" + from), match.Groups["address"].Value);
            Assert.Equal((match.Value, "own"), (match.Value, whole.Host));
            yield return whole.PathAndQuery;
        }
    }

    [GeneratedRegex("""<(?:script|img)\b[^>]*\ssrc="(?<address>[^"]+)"|<link\b(?=[^>]*\brel="(?:stylesheet|icon)")[^>]*\shref="(?<address>[^"]+)" """, RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.IgnorePatternWhitespace, 2000)]
    private static partial Regex Element();

    [GeneratedRegex("""url\("(?<address>[^"]+)"\)""", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex CssAddress();

    // those that are loaded only when they are needed count too
    [GeneratedRegex("""(from\s+|import\()'(?<address>[^']+)'""", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Import();

    /// <summary>What a visit costs.</summary>
    /// <param name="Bytes">Everything over the wire, heads of answers included.</param>
    /// <param name="Scripts">Scripts as they are sent, compressed, without the heads.</param>
    private sealed record Weight(int Bytes, int Scripts, int Requests);

    private sealed class Wire
    {
        public long Received { get; private set; }

        public HttpClient Client(Uri server, CookieContainer? cookies)
        {
            var handler = new SocketsHttpHandler
            {
                UseProxy = false,
                UseCookies = cookies is not null,
                CookieContainer = cookies ?? new CookieContainer(),
                AllowAutoRedirect = false,
                ConnectCallback = async (context, cancellation) =>
                {
                    var socket = new Socket(SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
                    await socket.ConnectAsync(context.DnsEndPoint, cancellation);
                    return new Counted(new NetworkStream(socket, ownsSocket: true), this);
                },
            };
            return new HttpClient(handler) { BaseAddress = server };
        }

        private sealed class Counted(Stream inner, Wire wire) : Stream
        {
            public override bool CanRead => true;

            public override bool CanSeek => false;

            public override bool CanWrite => true;

            public override long Length => throw new NotSupportedException();

            public override long Position
            {
                get => throw new NotSupportedException();
                set => throw new NotSupportedException();
            }

            public override async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
            {
                var read = await inner.ReadAsync(buffer, cancellationToken);
                wire.Received += read;
                return read;
            }

            public override int Read(byte[] buffer, int offset, int count)
            {
                var read = inner.Read(buffer, offset, count);
                wire.Received += read;
                return read;
            }

            public override ValueTask WriteAsync(ReadOnlyMemory<byte> buffer, CancellationToken cancellationToken = default) => inner.WriteAsync(buffer, cancellationToken);

            public override void Write(byte[] buffer, int offset, int count) => inner.Write(buffer, offset, count);

            public override void Flush() => inner.Flush();

            public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

            public override void SetLength(long value) => throw new NotSupportedException();

            protected override void Dispose(bool disposing)
            {
                if (disposing)
                {
                    inner.Dispose();
                }

                base.Dispose(disposing);
            }
        }
    }
}
