namespace PatternShop.Weave;

/// <summary>The stable names of the kinds of <see cref="Problem"/> that a pattern file or document can have.</summary>
public static class ProblemCodes
{
    // the file
    public const string FileTooLarge = "file-too-large";
    public const string FileEmpty = "file-empty";
    public const string NotAPattern = "not-a-pattern";
    public const string Syntax = "syntax";
    public const string TrailingComma = "trailing-comma";
    public const string Comment = "comment";
    public const string NotANumber = "not-a-number";
    public const string TrailingText = "trailing-text";
    public const string TooDeep = "too-deep";
    public const string TooManyValues = "too-many-values";
    public const string InvalidUtf8 = "invalid-utf8";
    public const string LoneSurrogate = "lone-surrogate";
    public const string RawControl = "raw-control";
    public const string UnknownEscape = "unknown-escape";
    public const string DuplicateMember = "duplicate-member";
    public const string MoreProblems = "more-problems";

    // the form of the document
    public const string FormatNewer = "format-newer";
    public const string FormatUnknown = "format-unknown";
    public const string MissingMember = "missing-member";
    public const string UnknownMember = "unknown-member";
    public const string WrongType = "wrong-type";
    public const string NotWhole = "not-whole";
    public const string NumberSize = "number-size";
    public const string UnknownWord = "unknown-word";
    public const string NotDecimal = "not-decimal";
    public const string MotifEmpty = "motif-empty";
    public const string MotifRowLength = "motif-row-length";
    public const string MotifCell = "motif-cell";
    public const string NestedRepeat = "nested-repeat";
    public const string ColourValue = "colour-value";
    public const string ColourOrder = "colour-order";

    // what it says
    public const string TextEmpty = "text-empty";
    public const string TextLength = "text-length";
    public const string TextCharacter = "text-character";
    public const string TextDirection = "text-direction";
    public const string Language = "language";
    public const string RowWordsOrder = "row-words-order";
    public const string VideoCount = "video-count";
    public const string VideoAddress = "video-address";
    public const string PhotoCount = "photo-count";
    public const string PhotoHash = "photo-hash";
    public const string PhotoTwice = "photo-twice";
    public const string MotifSize = "motif-size";
    public const string Repeats = "repeats";
    public const string Offset = "offset";
    public const string Balance = "balance";
    public const string PieceEnds = "piece-ends";
    public const string Wefts = "wefts";
    public const string WeftUnknown = "weft-unknown";
    public const string ChartRow = "chart-row";
    public const string PlainCount = "plain-count";
    public const string RepeatTimes = "repeat-times";
    public const string RepeatEmpty = "repeat-empty";
    public const string StitchAcross = "stitch-across";
    public const string StitchFrom = "stitch-from";
    public const string StitchWeft = "stitch-weft";
    public const string StepCount = "step-count";
    public const string PieceRows = "piece-rows";
    public const string PieceStitches = "piece-stitches";
    public const string NothingWoven = "nothing-woven";
    public const string Density = "density";
    public const string DecimalPlaces = "decimal-places";
    public const string LimitsEmpty = "limits-empty";
    public const string LimitThreads = "limit-threads";
    public const string LimitLength = "limit-length";
    public const string ClothWefts = "cloth-wefts";
    public const string Thickness = "thickness";
    public const string ColourUnknown = "colour-unknown";
    public const string ColourName = "colour-name";
    public const string ColourTwice = "colour-twice";
    public const string ColourCount = "colour-count";
    public const string ColourThreads = "colour-threads";
    public const string OrderLength = "order-length";
}
