using System.Globalization;
using System.Runtime.InteropServices;

namespace PatternShop.Weave;

/// <summary>
/// The whole piece that a document stands for: its ends, its rows in weaving order, and what each row reads. Derived,
/// never stored. Ends are counted from the weaver's left; columns (from 0) include the floating ends.
/// </summary>
public sealed class Piece
{
    private readonly Lazy<Sequence<Reading>> _readings;
    private readonly Lazy<int[]> _firstRow;

    private Piece(PatternDocument document)
    {
        Document = document;
        var order = WeavingOrder.Unroll(document);
        Rows = Sequence.Of<WovenRow>(CollectionsMarshal.AsSpan(order.Rows));
        Stitches = order.Stitches.ToSequence();
        Keys = order.Keys.ToSequence();
        UsedWefts = document.Rows.UsedWefts();
        Cells = ReadingCells.Fill(this);
        Bands = PieceBands.Of(this);
        _readings = new Lazy<Sequence<Reading>>(ReadAll);
        _firstRow = new Lazy<int[]>(FirstRows);
    }

    /// <summary>What the maker decided.</summary>
    public PatternDocument Document { get; }

    /// <summary>Number of pattern ends: motif × repeats + balance ends.</summary>
    public int PatternEnds => (Document.Motif.Columns * Document.Width.Repeats) + Document.Width.Balance;

    /// <summary>Floating ends a side: 0 or 1.</summary>
    public int FloatingPerSide => Document.Width.Floating is null ? 0 : 1;

    /// <summary>Number of all ends, floating ones included.</summary>
    public int Ends => PatternEnds + (2 * FloatingPerSide);

    /// <summary>All rows in weaving order.</summary>
    public Sequence<WovenRow> Rows { get; }

    /// <summary>The edge stitches in the order in which they are worked.</summary>
    public Sequence<WovenStitch> Stitches { get; }

    /// <summary>The numbers, from 1, of the wefts with which something is done; a document may list more.</summary>
    public Sequence<int> UsedWefts { get; }

    /// <summary>What the distinct readings depend on, in the order in which they first occur.</summary>
    public Sequence<ReadingKey> Keys { get; }

    /// <summary>Distinct readings × all ends, from the left, true where the weft is over.</summary>
    public BitGrid Cells { get; }

    /// <summary>Stretches of rows woven once or again and again; together all rows.</summary>
    public Sequence<Band> Bands { get; }

    /// <summary>The distinct readings, in the order of <see cref="Keys"/>; worked out when they are asked for first, then kept.</summary>
    public Sequence<Reading> Readings => _readings.Value;

    /// <summary>Whether all readings have been worked out and are kept.</summary>
    public bool KeepsReadings => _readings.IsValueCreated;

    /// <summary>Makes the piece of a document.</summary>
    /// <exception cref="ArgumentException">The document breaks a rule of <see cref="DocumentRules"/>.</exception>
    public static Piece Of(PatternDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        var problems = DocumentRules.Check(document);
        return problems.Count == 0
            ? new Piece(document)
            : throw new ArgumentException($"{problems[0].Pointer}: {problems[0].What}", nameof(document));
    }

    /// <summary>The motif's end (from 0) that a pattern end (from 0) shows.</summary>
    public int MotifEnd(int patternEnd) => (patternEnd + Document.Width.Offset) % Document.Motif.Columns;

    /// <summary>The reading of a row.</summary>
    /// <param name="number">The row's number, from 1.</param>
    public Reading Reading(int number) => Readings[Rows[number - 1].Reading];

    /// <summary>
    /// Reads rows by their numbers, from 1, each time anew: equal to <see cref="Reading(int)"/>, but the piece keeps nothing. For who wants
    /// few rows or each once, one after another: readings are many times the size of the chart.
    /// </summary>
    public Func<int, Reading> Reader()
    {
        var search = new WritingSearch(Document.Motif.Columns);
        return number => Read(search, Rows[number - 1].Reading);
    }

    /// <summary>What the weft does in a row at an end.</summary>
    /// <param name="number">The row's number, from 1.</param>
    /// <param name="column">The end, from 0 at the left, floating ends included.</param>
    public Stroke At(int number, int column) => Cells[Rows[number - 1].Reading, column] ? Stroke.Over : Stroke.Under;

    /// <summary>Whether the end at a column (from 0) is a floating one.</summary>
    public bool IsFloating(int column) => column < FloatingPerSide || column >= FloatingPerSide + PatternEnds;

    /// <summary>The name of the end at a column (from 0): "F" for a floating one, else its number.</summary>
    public string EndName(int column) =>
        IsFloating(column) ? "F" : (column - FloatingPerSide + 1).ToString(CultureInfo.InvariantCulture);

    /// <summary>Index of the band to which a row belongs.</summary>
    /// <param name="number">The row's number, from 1.</param>
    public int BandOf(int number)
    {
        var (low, high) = (0, Bands.Count - 1);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            (low, high) = Bands[middle].FirstRow <= number ? (middle, high) : (low, middle - 1);
        }

        return low;
    }

    /// <summary>Where a row stands: within its band, and which time through.</summary>
    /// <param name="number">The row's number, from 1.</param>
    public Place PlaceOf(int number)
    {
        var band = Bands[BandOf(number)];
        var into = number - band.FirstRow;
        return new Place(number, (into % band.RowsEachTime) + 1, band.RowsEachTime, (into / band.RowsEachTime) + 1, band.Times);
    }

    /// <summary>The printed row that stands for a row: itself, or the row of the first or second time through that reads the same.</summary>
    /// <param name="number">The row's number, from 1.</param>
    public int PrintedFor(int number)
    {
        var band = Bands[BandOf(number)];
        return band.FirstRow + ((number - band.FirstRow) % band.PrintedRows);
    }

    /// <summary>Numbers of the rows that a chart and its directions print, in weaving order: repeated rows once, or twice where the second time reads differently.</summary>
    public IEnumerable<int> PrintedRows() => Bands.SelectMany(band => Enumerable.Range(band.FirstRow, band.PrintedRows));

    /// <summary>
    /// The number of the first row before this one that reads the same in the same travel, whether or not it comes from
    /// the same row of the motif; null when there is none.
    /// </summary>
    /// <param name="number">The row's number, from 1.</param>
    public int? SameReadingBefore(int number)
    {
        var first = _firstRow.Value[Rows[number - 1].Reading];
        return first < number ? first : null;
    }

    private int[] FirstRows()
    {
        var alike = new Dictionary<int, int>(new AlikeRows(this));
        var first = new int[Keys.Count];
        for (var row = 1; row <= Rows.Count; row++)
        {
            var reading = Rows[row - 1].Reading;
            if (first[reading] == 0)
            {
                alike.TryAdd(reading, row);
                first[reading] = alike[reading];
            }
        }

        return first;
    }

    private Sequence<Reading> ReadAll()
    {
        var readings = new Reading[Keys.Count];
        var search = new WritingSearch(Document.Motif.Columns);
        var read = new Dictionary<int, int>(new AlikeRows(this));
        for (var i = 0; i < readings.Length; i++)
        {
            if (!read.TryAdd(i, i))
            {
                readings[i] = readings[read[i]] with { Key = Keys[i] };
                continue;
            }

            readings[i] = Read(search, i);
        }

        return Sequence.Of<Reading>(readings);
    }

    private Reading Read(WritingSearch search, int reading)
    {
        var key = Keys[reading];
        var runs = Runs.Of(Cells, reading, key.From);
        return new Reading(key, runs, search.Of(runs, ShortestWriting.Levels));
    }

    /// <summary>Readings, by index, are alike when their cells and their travel are.</summary>
    private sealed class AlikeRows(Piece piece) : IEqualityComparer<int>
    {
        public bool Equals(int x, int y) => piece.Keys[x].From == piece.Keys[y].From && piece.Cells.RowWords(x).SequenceEqual(piece.Cells.RowWords(y));

        public int GetHashCode(int reading)
        {
            var hash = new HashCode();
            hash.Add(piece.Keys[reading].From);
            hash.AddBytes(MemoryMarshal.AsBytes(piece.Cells.RowWords(reading)));
            return hash.ToHashCode();
        }
    }
}
