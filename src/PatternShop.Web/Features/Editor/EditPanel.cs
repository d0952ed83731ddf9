using Microsoft.AspNetCore.Components;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>A panel whose fields are edits: each change is one step, and what is refused is said beside its field.</summary>
public abstract class EditPanel : ComponentBase
{
    private static readonly Problem NotSaved = new("", "", 0, 0, "This is not saved: the server cannot store it now.", "Try again in a moment.");
    private static readonly BitGrid Nothing = BitGrid.Create(1, 1, static (_, _) => false);
    private static readonly Problem Deleted = new("", "", 0, 0, "This is not saved: the pattern was deleted.", "Go back to my patterns.");
    private static readonly Problem Ended = new("", "", 0, 0, "This is not saved: you are signed out.", "Sign in again.");

    private object? _seen;

    [CascadingParameter]
    private protected Editing Editing { get; set; } = default!;

    [Inject]
    private protected Wording Words { get; set; } = default!;

    private protected PatternDocument Document => Editing.View.Document;

    /// <summary>What is wrong with the edit that was tried last; empty when it was made.</summary>
    private protected Sequence<Problem> Problems { get; private set; } = [];

    /// <summary>What that edit changed besides.</summary>
    private protected Sequence<Consequence> Consequences { get; private set; } = [];

    protected override void OnInitialized() => _seen = Seen();

    // A stroke changes nothing in most panels: they are not sent again with each.
    protected override bool ShouldRender()
    {
        var seen = Seen();
        var changed = !seen.Equals(_seen);
        _seen = seen;
        return changed;
    }

    /// <summary>What the panel is drawn from: it is drawn again when that changes.</summary>
    private protected virtual object Seen() => (Document with { Motif = Nothing }, Document.Motif.Rows, Document.Motif.Columns, Problems, Consequences);

    /// <summary>Makes an edit; false when it was not made, and the panel says why.</summary>
    private protected Task<bool> MakeAsync(Edit edit) => AfterAsync(Editing.MakeAsync(edit));

    /// <summary>Makes an edit of what stands once the edits before are made: the fields of a panel may be typed faster than they are saved.</summary>
    private protected Task<bool> MakeAsync(Func<PatternDocument, Edit?> edit) => AfterAsync(Editing.MakeAsync(edit));

    /// <summary>What is wrong with a field, and what to do; null when nothing is.</summary>
    private protected string? ProblemAt(string pointer) =>
        Problems.FirstOrDefault(problem => Concerns(problem, pointer)) is { } problem ? $"{problem.What} {problem.Remedy}" : null;

    /// <summary>Problems that none of the fields shows.</summary>
    private protected IEnumerable<Problem> ProblemsBeside(params string[] pointers) =>
        Problems.Where(problem => !Array.Exists(pointers, pointer => Concerns(problem, pointer)));

    private async Task<bool> AfterAsync(Task<Acknowledgement> edit)
    {
        var acknowledgement = await edit;
        Consequences = acknowledgement is Acknowledgement.Saved saved ? saved.Consequences : [];
        Problems = acknowledgement switch
        {
            Acknowledgement.Refused refused => refused.Problems,
            Acknowledgement.SignedOut => [Ended],
            Acknowledgement.Gone => [Deleted],
            { IsOpen: true } => [NotSaved],
            _ => [],
        };
        StateHasChanged();
        return Problems.Count == 0;
    }

    private static bool Concerns(Problem problem, string pointer) =>
        problem.Pointer == pointer || problem.Pointer.StartsWith(pointer + "/", StringComparison.Ordinal);
}
