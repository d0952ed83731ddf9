using PatternShop.Store;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>An edit as a window sends it.</summary>
internal sealed record EditMessage(string Client, long Sequence, long After, Edit Edit);

/// <summary>
/// One open pattern: edits of all its windows are made one after another on the present document, each is in the store
/// before it is acknowledged, and the other windows hear of it.
/// </summary>
internal sealed partial class PatternSession(PatternId id, PatternState now, Workroom workroom, OpenSessions sessions, Wording wording, ILogger log)
{
    private const int Tries = 2;
    private readonly OneByOne _turns = new();
    private readonly Dictionary<string, long> _settled = new(StringComparer.Ordinal);
    private volatile PatternView _view = new(now);

    public PatternId Id => id;

    public Seats Seats { get; } = new();

    public PatternView View => _view;

    public Task<Acknowledgement> SubmitAsync(PatternSeat seat, EditMessage message) => InTurn(seat, async () =>
    {
        var highest = _settled.GetValueOrDefault(message.Client);
        if (message.After > highest)
        {
            return new Acknowledgement.Early();
        }

        var acknowledgement = await MakeAsync(seat, message);
        if (!acknowledgement.IsOpen)
        {
            _settled[message.Client] = Math.Max(highest, message.Sequence);
        }

        return acknowledgement;
    });

    public Task<Acknowledgement> UndoAsync(PatternSeat seat, string client, long sequence) => InTurn(seat, async () =>
        Take(await workroom.UndoAsync(seat.Maker, id, client, sequence, View.Revision), []) ?? new Acknowledgement.Unsaved());

    public Task<Acknowledgement> RedoAsync(PatternSeat seat, string client, long sequence) => InTurn(seat, async () =>
        Take(await workroom.RedoAsync(seat.Maker, id, client, sequence, View.Revision), []) ?? new Acknowledgement.Unsaved());

    private Task<Acknowledgement> InTurn(PatternSeat seat, Func<Task<Acknowledgement>> act) => _turns.DoAsync(async () =>
    {
        var before = View;
        var acknowledgement = await TryAsync(seat, act);
        if (!ReferenceEquals(before, View))
        {
            Seats.TellOthers(seat);
        }

        return acknowledgement;
    });

    private async Task<Acknowledgement> TryAsync(PatternSeat seat, Func<Task<Acknowledgement>> act)
    {
        try
        {
            return await sessions.IsCurrentAsync(seat.Maker, seat.Stamp) ? await act() : new Acknowledgement.SignedOut();
        }
        catch (StoreException failure)
        {
            LogUnsaved(log, id, failure);
            return new Acknowledgement.Unsaved();
        }
    }

    private async Task<Acknowledgement> MakeAsync(PatternSeat seat, EditMessage message)
    {
        for (var time = 1; time <= Tries; time++)
        {
            var result = message.Edit.Apply(View.Document);
            if (result is EditResult.Refused refused)
            {
                return await RefuseAsync(seat, message, refused.Problems);
            }

            var done = (EditResult.Done)result;
            var step = new StepRequest(message.Client, message.Sequence, View.Revision, wording.EditName(message.Edit), done.Document);
            if (Take(await workroom.SaveAsync(seat.Maker, id, step), done.Consequences) is { } settled)
            {
                return settled;
            }
        }

        return new Acknowledgement.Unsaved();
    }

    // An edit that fitted and was saved need not fit again: it is not refused when it comes once more.
    private async Task<Acknowledgement> RefuseAsync(PatternSeat seat, EditMessage message, Sequence<Problem> problems) =>
        await workroom.CarriedOutAsync(seat.Maker, id, message.Client, message.Sequence)
            ? new Acknowledgement.HadAlready()
            : new Acknowledgement.Refused(problems);

    /// <summary>Takes over where the store says the pattern stands; null when somebody outside went on with it and the edit is to be tried again.</summary>
    private Acknowledgement? Take(SaveResult result, Sequence<Consequence> consequences)
    {
        switch (result)
        {
            case SaveResult.Saved saved:
                Show(saved.Now);
                return new Acknowledgement.Saved(consequences);
            case SaveResult.HadAlready had:
                Show(had.Now);
                return new Acknowledgement.HadAlready();
            case SaveResult.Moved moved:
                Show(moved.Now);
                return null;
            case SaveResult.Nothing nothing:
                Show(nothing.Now);
                return new Acknowledgement.Nothing();
            case SaveResult.Refused refused:
                return new Acknowledgement.Refused(refused.Problems);
            default:
                return new Acknowledgement.Gone();
        }
    }

    private void Show(PatternState state)
    {
        if (state.Revision != View.Revision)
        {
            _view = new PatternView(state);
        }
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "An edit of pattern {Pattern} could not be saved")]
    private static partial void LogUnsaved(ILogger log, PatternId pattern, Exception failure);
}
