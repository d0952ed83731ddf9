using System.Collections.Concurrent;
using Microsoft.Playwright;
using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>
/// One reader's window on a server. It hears everything that goes wrong while pages are used: errors in the console (the
/// Content-Security-Policy's among them), exceptions of scripts, answers that say no, and requests to anybody else.
/// </summary>
public sealed class Visit : IAsyncDisposable
{
    private readonly ConcurrentQueue<string> _console = [];
    private readonly ConcurrentQueue<string> _faults = [];
    private readonly ConcurrentDictionary<string, int> _refusals = new(StringComparer.Ordinal);
    private readonly Uri _server;

    private Visit(IPage page, Uri server)
    {
        (Page, _server) = (page, server);
        var context = page.Context;
        context.Console += (_, message) => HearConsole(message);
        context.WebError += (_, error) => _faults.Enqueue($"exception: {error.Error}");
        context.Request += (_, request) => HearRequest(request);
        context.Response += (_, response) => HearResponse(response);
    }

    public IPage Page { get; }

    /// <summary>Everything that went wrong so far.</summary>
    public IReadOnlyList<string> Faults => [.. _faults];

    /// <summary>What the console of the browser says.</summary>
    public IReadOnlyList<string> Console => [.. _console];

    public static async Task<Visit> OpenAsync(IBrowser browser, Uri server, Reader reader)
    {
        ArgumentNullException.ThrowIfNull(browser);
        ArgumentNullException.ThrowIfNull(reader);
        var context = await browser.NewContextAsync(reader.Options(server));
        // also where the console stays silent
        await context.AddInitScriptAsync("addEventListener('securitypolicyviolation', event => console.error(`violation of ${event.effectiveDirective} by ${event.blockedURI}`))");
        return new Visit(await context.NewPageAsync(), server);
    }

    /// <summary>Goes to an address of the server that answers with a status, and waits for its fonts where scripts run.</summary>
    public async Task<IResponse> GoAsync(string address, int status = 200)
    {
        if (status >= 400)
        {
            Expects(address, status);
        }

        var response = await Page.GotoAsync(address) ?? throw new InvalidOperationException($"{address} gave no answer.");
        Assert.Equal((address, status), (address, response.Status));
        await Page.EvaluateAsync("document.fonts.ready");
        return response;
    }

    /// <summary>Says beforehand that an address will answer no, and that this is no fault.</summary>
    public void Expects(string address, int status) => _refusals[new Uri(_server, address).ToString()] = status;

    public async ValueTask DisposeAsync() => await Page.Context.DisposeAsync();

    private void HearConsole(IConsoleMessage message)
    {
        _console.Enqueue($"{message.Type}: {message.Text} ({message.Location})");
        var expected = message.Text.StartsWith("Failed to load resource", StringComparison.Ordinal) && _refusals.Keys.Any(address => message.Location.StartsWith(address, StringComparison.Ordinal));
        if (message.Type is "error" or "warning" && !expected)
        {
            _faults.Enqueue($"console {message.Type}: {message.Text}");
        }
    }

    private void HearRequest(IRequest request)
    {
        var address = new Uri(request.Url);
        if (address.Scheme is not ("data" or "blob" or "about") && (address.Host != _server.Host || address.Port != _server.Port))
        {
            _faults.Enqueue($"request to others: {request.Url}");
        }
    }

    private void HearResponse(IResponse response)
    {
        if (response.Status >= 400 && _refusals.GetValueOrDefault(response.Url) != response.Status)
        {
            _faults.Enqueue($"answer {response.Status}: {new Uri(response.Url).PathAndQuery}");
        }
    }
}
