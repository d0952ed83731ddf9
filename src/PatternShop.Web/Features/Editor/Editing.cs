using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>What the parts of an editor page share: where the pattern stands, and the one way to change it.</summary>
/// <param name="view">Where the pattern stands.</param>
/// <param name="fields">The fields' way to the pattern.</param>
/// <param name="show">Tells the script and shows where the pattern stands now.</param>
/// <param name="point">Marks cells in the charts until the next touch.</param>
internal sealed class Editing(PatternView view, FieldEdits fields, Func<Task> show, Action<Sequence<Area>> point)
{
    /// <summary>What the page shows.</summary>
    public PatternView View { get; set; } = view;

    /// <summary>Asks the page which cells are chosen; null when none are.</summary>
    public Func<Task<CellRectangle?>> Chosen { get; set; } = static () => Task.FromResult<CellRectangle?>(null);

    /// <summary>The maker's session has ended: nothing can be saved from this page.</summary>
    public bool IsSignedOut { get; set; }

    public Task<Acknowledgement> MakeAsync(Edit edit) => AfterAsync(fields.MakeAsync(edit));

    /// <summary>Makes an edit of the document as it stands once the edits before are made; null when there is nothing to change.</summary>
    public Task<Acknowledgement> MakeAsync(Func<PatternDocument, Edit?> edit) => AfterAsync(fields.MakeAsync(edit));

    public Task<Acknowledgement> UndoAsync() => AfterAsync(fields.UndoAsync());

    public Task<Acknowledgement> RedoAsync() => AfterAsync(fields.RedoAsync());

    /// <summary>Marks cells in the charts until the next touch.</summary>
    public void Point(Sequence<Area> areas) => point(areas);

    /// <summary>Shows where the pattern stands now.</summary>
    public Task ShowAsync() => show();

    private async Task<Acknowledgement> AfterAsync(Task<Acknowledgement> edit)
    {
        var acknowledgement = await edit;
        IsSignedOut |= acknowledgement is Acknowledgement.SignedOut;
        await ShowAsync();
        return acknowledgement;
    }
}
