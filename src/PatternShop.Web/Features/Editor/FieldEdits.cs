using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>Edits that the fields beside the chart make: each under a number of its own, and known until it is settled.</summary>
internal sealed class FieldEdits(PatternSeat seat, string client)
{
    private readonly HashSet<Task> _open = [];
    private long _sequence;

    public Task<Acknowledgement> MakeAsync(Edit edit) => Keep(seat.SubmitAsync(client, ++_sequence, 0, edit));

    public Task<Acknowledgement> UndoAsync() => Keep(seat.UndoAsync(client, ++_sequence));

    public Task<Acknowledgement> RedoAsync() => Keep(seat.RedoAsync(client, ++_sequence));

    /// <summary>Ends when everything that was asked so far is settled.</summary>
    public Task SettledAsync() => Task.WhenAll(_open);

    private async Task<Acknowledgement> Keep(Task<Acknowledgement> edit)
    {
        _open.Add(edit);
        try
        {
            return await edit;
        }
        finally
        {
            _open.Remove(edit);
        }
    }
}
