namespace PatternShop.Weave;

/// <summary>The stable names of the kinds of <see cref="Problem"/> that typed or pasted text can have.</summary>
public static class BeginProblemCodes
{
    // typed runs
    public const string RunsEmpty = "runs-empty";
    public const string RunsWord = "runs-word";
    public const string RunsCount = "runs-count";
    public const string RunsBracket = "runs-bracket";
    public const string RunsTimes = "runs-times";
    public const string RunsRowLength = "runs-row-length";
    public const string RunsTooWide = "runs-too-wide";
    public const string RunsTooManyRows = "runs-too-many-rows";

    // pasted cells
    public const string CellsEmpty = "cells-empty";
    public const string CellsBlank = "cells-blank";
    public const string CellsQuote = "cells-quote";
    public const string CellsTooWide = "cells-too-wide";
    public const string CellsTooManyRows = "cells-too-many-rows";

    // orders of threads
    public const string OrderEmpty = "order-empty";
    public const string OrderWord = "order-word";
    public const string OrderThread = "order-thread";
    public const string OrderTooLong = "order-too-long";

    // any of these
    public const string TextTooLong = "text-too-long";
    public const string MoreProblems = ProblemCodes.MoreProblems;
}
