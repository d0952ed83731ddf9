using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>Edits that the fields beside the chart make: each under a number of its own, and known until it is settled.</summary>
internal sealed class FieldEdits(PatternSeat seat, string client)
{
    private readonly HashSet<Task> _open = [];
    private Acknowledgement? _last;
    private long _sequence;

    public Task<Acknowledgement> MakeAsync(Edit edit) => Keep(seat.SubmitAsync(client, ++_sequence, 0, edit));

    /// <summary>Makes an edit of the document as it stands once everything is answered that was asked before, so that fields which are typed fast do not undo each other.</summary>
    /// <param name="edit">The edit of a document; null when there is nothing to change.</param>
    public Task<Acknowledgement> MakeAsync(Func<PatternDocument, Edit?> edit) => Keep(MakeAfterAsync(Task.WhenAll(_open), edit));

    public Task<Acknowledgement> UndoAsync() => Keep(seat.UndoAsync(client, ++_sequence));

    public Task<Acknowledgement> RedoAsync() => Keep(seat.RedoAsync(client, ++_sequence));

    /// <summary>Waits until everything that was asked so far is answered. What is to be done again, or null when all of it is settled.</summary>
    public async Task<Acknowledgement?> SettledAsync()
    {
        await Task.WhenAll(_open);
        return _last is { IsOpen: true } open ? open : null;
    }

    // whoever asked before hears of a failure, not whoever asks for this
    private async Task<Acknowledgement> MakeAfterAsync(Task before, Func<PatternDocument, Edit?> edit)
    {
        await before.ConfigureAwait(ConfigureAwaitOptions.ContinueOnCapturedContext | ConfigureAwaitOptions.SuppressThrowing);
        return edit(seat.View.Document) is { } made ? await seat.SubmitAsync(client, ++_sequence, 0, made) : new Acknowledgement.Nothing();
    }

    private Task<Acknowledgement> Keep(Task<Acknowledgement> edit)
    {
        var noted = NoteAsync(edit);
        _open.RemoveWhere(one => one.IsCompleted);
        _open.Add(noted);
        return noted;
    }

    // whoever waits for the edit to be settled must find what came of it
    private async Task<Acknowledgement> NoteAsync(Task<Acknowledgement> edit) => _last = await edit;
}
