using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>What became of an edit that a window asked for.</summary>
internal abstract record Acknowledgement
{
    private Acknowledgement()
    {
    }

    /// <summary>Whether asking again could come to something else: the edit is neither in the store nor refused.</summary>
    public virtual bool IsOpen => false;

    /// <summary>It is in the store.</summary>
    /// <param name="Consequences">What it changed besides.</param>
    public sealed record Saved(Sequence<Consequence> Consequences) : Acknowledgement;

    /// <summary>It was in the store already, under the same client and sequence.</summary>
    public sealed record HadAlready : Acknowledgement;

    /// <summary>It does not fit; nothing changed.</summary>
    /// <param name="Problems">Everything that is wrong; at least one.</param>
    public sealed record Refused(Sequence<Problem> Problems) : Acknowledgement;

    /// <summary>There is nothing to undo, redo or change.</summary>
    public sealed record Nothing : Acknowledgement;

    /// <summary>The maker has no such pattern any more.</summary>
    public sealed record Gone : Acknowledgement;

    /// <summary>An earlier edit of the same client must come first.</summary>
    public sealed record Early : Acknowledgement
    {
        public override bool IsOpen => true;
    }

    /// <summary>The store could not save it now.</summary>
    public sealed record Unsaved : Acknowledgement
    {
        public override bool IsOpen => true;
    }

    /// <summary>The maker's session has ended.</summary>
    public sealed record SignedOut : Acknowledgement
    {
        public override bool IsOpen => true;
    }
}
