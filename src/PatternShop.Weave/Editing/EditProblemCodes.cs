namespace PatternShop.Weave;

/// <summary>The stable names of the kinds of <see cref="Problem"/> that an edit can meet besides those of the document it would make.</summary>
public static class EditProblemCodes
{
    public const string MotifOtherSize = "motif-other-size";
    public const string NoSuchThreads = "no-such-threads";
    public const string BoxOutside = "box-outside";
    public const string BoxNotSquare = "box-not-square";
}
