using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>Between one window's script and the open pattern: strokes come in, answers and everybody's changes go out.</summary>
internal sealed partial class ChartBridge(IJSRuntime js, PatternSeat seat, Editing editing, FieldEdits fields, ChartFeed feed, ILogger log) : IAsyncDisposable
{
    private const string Script = "/scripts/editor/editor.js";
    private const int ClientMost = 64;
    private readonly List<AnsweredStroke> _answers = [];
    private DotNetObjectReference<ChartBridge>? _self;
    private IJSObjectReference? _editor;
    private long _told;
    private bool _lacksAll;
    private bool _hasEnded;
    private bool _isGone;

    /// <summary>Whether it was opened, or is about to be.</summary>
    public bool IsOpen { get; private set; }

    /// <summary>Opens the pattern in the script, on the element that holds the page.</summary>
    /// <exception cref="TimeoutException">The script did not answer in time.</exception>
    public async Task OpenAsync(ElementReference root)
    {
        IsOpen = true;
        try
        {
            await OpenScriptAsync(root);
        }
        catch (Exception end) when (end is JSDisconnectedException || (_isGone && IsEnd(end)))
        {
            LogGone(log, seat.Session.Id.Value);
        }
        catch (TaskCanceledException late)
        {
            // the framework takes a cancelled task for no fault: the page would say for ever that it opens
            throw new TimeoutException("The script of the editor did not answer.", late);
        }
    }

    /// <summary>A stroke of this window, or one that a page which is gone has left behind.</summary>
    /// <param name="client">The page that drew it.</param>
    /// <param name="sequence">Its number there.</param>
    /// <param name="after">The number of the stroke that must be settled before; 0 when there is none.</param>
    /// <param name="text">The cells, as <see cref="StrokeText"/> reads them.</param>
    [JSInvokable]
    public async Task Stroke(string client, long sequence, long after, string text)
    {
        if (client is not { Length: > 0 and <= ClientMost } || text is null)
        {
            return;
        }

        var stroke = StrokeText.Read(text);
        var acknowledgement = stroke is null
            ? Unreadable()
            : await seat.SubmitAsync(client, sequence, after, stroke);
        editing.IsSignedOut |= acknowledgement is Acknowledgement.SignedOut;
        _answers.Add(new AnsweredStroke(SettledStroke.Of(client, sequence, acknowledgement), stroke));
        Tell();
        await editing.ShowAsync();
    }

    /// <summary>Changes the shape of the motif, or a part of it; null when it cannot be understood.</summary>
    [JSInvokable]
    public async Task<ShapeAnswer?> Shape(ShapeRequest request) =>
        request?.Edit() is { } edit ? ShapeAnswer.Of(edit, await editing.MakeAsync(edit), feed.Wording) : null;

    [JSInvokable]
    public Task Undo() => editing.UndoAsync();

    [JSInvokable]
    public Task Redo() => editing.RedoAsync();

    /// <summary>Ends when everything that the fields asked before is answered: settled, unsaved or signedOut.</summary>
    [JSInvokable]
    public async Task<string> Settle() => await fields.SettledAsync() switch
    {
        null => "settled",
        Acknowledgement.SignedOut => "signedOut",
        _ => "unsaved",
    };

    /// <summary>Sends everything to a window that may have missed something.</summary>
    [JSInvokable]
    public void Resync()
    {
        _lacksAll = true;
        Tell();
    }

    /// <summary>Tells the script what it lacks, if anything.</summary>
    public void Tell()
    {
        if (_editor is { } editor && !_hasEnded && (_lacksAll || _answers.Count > 0 || _told != seat.View.Revision))
        {
            var view = seat.View;
            AnsweredStroke[] answers = [.. _answers];
            var update = _lacksAll ? feed.Whole(view, answers) : feed.Next(view, answers);
            _answers.Clear();
            (_told, _lacksAll) = (view.Revision, false);
            // nothing waits for the script: what a broken connection swallows it asks for again
            _ = Quietly(async () => await editor.InvokeVoidAsync("receive", update));
        }
    }

    /// <summary>Tells the script that the maker's session has ended; nothing else is told from now on.</summary>
    public void End()
    {
        _hasEnded = true;
        if (_editor is { } editor)
        {
            _ = Quietly(async () => await editor.InvokeVoidAsync("signedOut"));
        }
    }

    /// <summary>Marks cells in the charts until the next touch.</summary>
    public void Mark(Sequence<Area> areas)
    {
        if (_editor is { } editor)
        {
            var blocks = PrintedAreas.Of(editing.View.Piece, areas);
            _ = Quietly(async () => await editor.InvokeVoidAsync("mark", blocks));
        }
    }

    public async ValueTask DisposeAsync()
    {
        _isGone = true;
        _self?.Dispose();
        if (_editor is { } editor)
        {
            _editor = null;
            await CloseAsync(editor);
        }
    }

    private async Task OpenScriptAsync(ElementReference root)
    {
        await using var module = await js.InvokeAsync<IJSObjectReference>("import", Script);
        feed.Client = await module.InvokeAsync<string>("clientId");
        if (_isGone || _hasEnded)
        {
            return;
        }

        _self = DotNetObjectReference.Create(this);
        _told = seat.View.Revision;
        var editor = await module.InvokeAsync<IJSObjectReference>("open", root, _self, seat.Session.Id.Value, feed.Whole(seat.View, []));
        if (_isGone)
        {
            await CloseAsync(editor);
            return;
        }

        _editor = editor;
        editing.Chosen = ChosenAsync;
        if (_hasEnded)
        {
            End();
        }

        Tell();
    }

    private Task CloseAsync(IJSObjectReference editor) => Quietly(async () =>
    {
        await editor.InvokeVoidAsync("close");
        await editor.DisposeAsync();
    });

    private async Task<CellRectangle?> ChosenAsync() =>
        _editor is { } editor && await editor.InvokeAsync<int[]?>("chosenCells") is [var row, var end, var rows, var ends]
            ? new CellRectangle(row, end, rows, ends)
            : null;

    private static Acknowledgement.Refused Unreadable() =>
        new([new Problem("", "/motif", 0, 0, "It cannot be read.", "Draw it again.")]);

    private async Task Quietly(Func<Task> call)
    {
        try
        {
            await call();
        }
        catch (Exception end) when (IsEnd(end))
        {
            LogGone(log, seat.Session.Id.Value);
        }
        catch (JSException fault)
        {
            LogFault(log, seat.Session.Id.Value, fault);
        }
    }

    private static bool IsEnd(Exception end) => end is JSDisconnectedException or TaskCanceledException or ObjectDisposedException;

    [LoggerMessage(Level = LogLevel.Debug, Message = "A window on pattern {Pattern} went away")]
    private static partial void LogGone(ILogger log, string pattern);

    [LoggerMessage(Level = LogLevel.Error, Message = "The script of a window on pattern {Pattern} failed")]
    private static partial void LogFault(ILogger log, string pattern, Exception fault);
}
