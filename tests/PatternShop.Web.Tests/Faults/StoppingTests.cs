using System.Net;
using System.Net.WebSockets;
using System.Text;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>How a server ends while somebody is at work.</summary>
public sealed class StoppingTests
{
    // Kestrel waited half a minute for a connection that nobody closed
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(15);

    [Fact]
    public async Task Open_workbenches_do_not_hold_the_server()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var benches = new List<ClientWebSocket>();
        for (var count = 0; count < 9; count++)
        {
            benches.Add(await ConnectAsync(shop, maker));
        }

        // they neither answer a farewell nor close
        await shop.StopAsync().WaitAsync(Patience, TestContext.Current.CancellationToken);
        benches.ForEach(bench => bench.Dispose());
        maker.Dispose();
    }

    [Fact]
    public async Task Whoever_comes_while_it_stops_is_sent_away_and_what_is_under_way_is_finished()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        using var late = shop.Visit();
        using var form = new SlowForm();
        using var slow = shop.Visit();
        slow.Handler.Expect100ContinueTimeout = Patience;
        var under = slow.SendAsync(HttpMethod.Post, "/sign-in", form, ("Expect", "100-continue"));
        await form.Reached;
        shop.Services.GetRequiredService<IHostApplicationLifetime>().StopApplication();
        var refused = await late.GetAsync("/");
        Assert.Equal((HttpStatusCode.ServiceUnavailable, "The shop can't do that right now"), (refused.Status, refused.Heading));
        Assert.Equal((HttpStatusCode.ServiceUnavailable, "Not ready: stopping"), await AskAsync(late, "/readyz"));
        Assert.Equal((HttpStatusCode.OK, "Healthy"), await AskAsync(late, "/healthz"));
        await Assert.ThrowsAsync<WebSocketException>(() => ConnectAsync(shop, maker));
        form.Finish();
        // it lacks the token of our form, which the server could see only in the whole of it
        Assert.Equal(HttpStatusCode.BadRequest, (await under).Status);
        maker.Dispose();
    }

    private static async Task<ClientWebSocket> ConnectAsync(TestShop shop, Visitor maker)
    {
        var bench = new ClientWebSocket();
        bench.Options.Cookies = maker.Handler.CookieContainer;
        bench.Options.SetRequestHeader("Origin", shop.Address.GetLeftPart(UriPartial.Authority));
        var address = new UriBuilder(shop.Address) { Scheme = "ws", Path = "/_blazor" };
        await bench.ConnectAsync(address.Uri, TestContext.Current.CancellationToken);
        await bench.SendAsync(Encoding.UTF8.GetBytes("{\"protocol\":\"blazorpack\",\"version\":1}\u001e"), WebSocketMessageType.Text, endOfMessage: true, TestContext.Current.CancellationToken);
        await bench.ReceiveAsync(new byte[1024], TestContext.Current.CancellationToken);
        return bench;
    }

    private static async Task<(HttpStatusCode, string)> AskAsync(Visitor visitor, string path)
    {
        var answer = await visitor.GetAsync(path);
        return (answer.Status, answer.Text);
    }

    /// <summary>A form whose body comes only when the test says so; the server has begun to read it when it asks for it.</summary>
    private sealed class SlowForm : HttpContent
    {
        private readonly TaskCompletionSource _reached = new(TaskCreationOptions.RunContinuationsAsynchronously);
        private readonly TaskCompletionSource _rest = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public SlowForm() => Headers.Add("Content-Type", "application/x-www-form-urlencoded");

        public Task Reached => _reached.Task;

        public void Finish() => _rest.SetResult();

        protected override async Task SerializeToStreamAsync(Stream stream, TransportContext? context)
        {
            _reached.SetResult();
            await _rest.Task;
            await stream.WriteAsync("a=b"u8.ToArray());
        }

        protected override bool TryComputeLength(out long length)
        {
            length = 3;
            return true;
        }
    }
}
