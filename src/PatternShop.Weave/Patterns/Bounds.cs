namespace PatternShop.Weave;

/// <summary>How large a pattern document may be. Whatever keeps them can be drawn, written out and printed in bounded time.</summary>
public static class Bounds
{
    /// <summary>Bytes of a pattern file: 4 MB.</summary>
    public const int FileBytes = 4 * 1024 * 1024;

    /// <summary>Values (texts, numbers, lists, objects) in a pattern file.</summary>
    public const int FileValues = 50_000;

    /// <summary>Objects and lists standing inside one another in a pattern file.</summary>
    public const int FileDepth = 16;

    /// <summary>Problems that are listed one by one; a last one says how many more there are.</summary>
    public const int ListedProblems = 200;

    /// <summary>Rows of the motif.</summary>
    public const int MotifRows = 1000;

    /// <summary>Ends of the motif.</summary>
    public const int MotifEnds = 1000;

    /// <summary>Pattern ends of the piece, floating ends not counted.</summary>
    public const int PieceEnds = 1000;

    /// <summary>Rows of the piece, the row plan unrolled.</summary>
    public const int PieceRows = 100_000;

    /// <summary>Edge stitches of the piece, the row plan unrolled.</summary>
    public const int PieceStitches = 100_000;

    /// <summary>Steps of the row plan, repeats and the steps inside them counted.</summary>
    public const int Steps = 1000;

    /// <summary>Wefts of a piece.</summary>
    public const int Wefts = 16;

    /// <summary>Times that an edge stitch goes across.</summary>
    public const int Across = 100;

    /// <summary>Characters of a title.</summary>
    public const int Title = 120;

    /// <summary>Characters of a language tag.</summary>
    public const int Language = 35;

    /// <summary>Characters of a licence.</summary>
    public const int Licence = 2000;

    /// <summary>Characters of the maker's notes.</summary>
    public const int Notes = 20_000;

    /// <summary>Characters of the maker's words for one row.</summary>
    public const int RowWords = 500;

    /// <summary>Characters of the caption of a video or a photo.</summary>
    public const int Caption = 200;

    /// <summary>Videos of a pattern, those of single rows among them.</summary>
    public const int Videos = 30;

    /// <summary>Characters of the address of a video.</summary>
    public const int VideoAddress = 500;

    /// <summary>Photos of a pattern, those of single rows among them.</summary>
    public const int Photos = 20;

    /// <summary>Threads of the longest float that a maker can allow.</summary>
    public const int LimitThreads = 1000;

    /// <summary>Length of the longest float that a maker can allow, in inches or centimetres.</summary>
    public const decimal LimitLength = 1000;

    /// <summary>Characters of the name of an edge stitch.</summary>
    public const int StitchName = 60;

    /// <summary>Colours of the maker's own.</summary>
    public const int OwnColours = 40;

    /// <summary>Characters of the name of a colour.</summary>
    public const int ColourName = 30;

    /// <summary>Characters of an order of colours.</summary>
    public const int OrderText = 1000;

    /// <summary>Threads of one part of an order of colours.</summary>
    public const int OrderThreads = 10_000;

    /// <summary>Largest amount of a thickness.</summary>
    public const decimal Thickness = 1000;

    /// <summary>Largest amount of threads per unit.</summary>
    public const decimal Density = 1000;

    /// <summary>Decimal places of an amount.</summary>
    public const int DecimalPlaces = 4;
}
