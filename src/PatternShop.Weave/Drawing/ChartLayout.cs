using System.Globalization;

namespace PatternShop.Weave;

/// <summary>A stretch of neighbouring printed rows that belong together in a chart: one time through a band.</summary>
/// <param name="Band">The band.</param>
/// <param name="PrintedTime">1, or 2 for the second reading of repeated rows.</param>
/// <param name="First">Index of its first printed row inside the window.</param>
/// <param name="Rows">How many of its rows the window shows.</param>
public sealed record ChartStretch(Band Band, int PrintedTime, int First, int Rows);

/// <summary>Where everything of a chart window lies, in millimetres.</summary>
public sealed class ChartLayout
{
    private const double LegendPart = 1.59;
    private const double BracketPart = 0.58;
    private const double BracketGap = 4;
    private const double StretchGap = 1.6;
    private const double FloatingGap = 1.4;
    private const double BalanceGap = 1.2;
    private readonly int[] _numbers;
    private readonly double[] _rowTop;

    /// <summary>Lays out a window of a chart.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="window">Which part of it.</param>
    /// <param name="cell">Side of a cell in millimetres.</param>
    /// <param name="legend">Whether the legend stands on top.</param>
    /// <param name="wording">The words of legend and brackets.</param>
    /// <param name="look">How it is lettered and inked; as usual where none is given.</param>
    public ChartLayout(Piece piece, ChartWindow window, double cell, bool legend, Wording wording, ChartLook? look = null)
    {
        ArgumentNullException.ThrowIfNull(wording);
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(window);
        (Piece, Window, Cell, Look) = (piece, window, cell, look ?? ChartLook.Usual);
        _numbers = piece.PrintedRows().Skip(window.FirstRow).Take(window.Rows).ToArray();
        Stretches = FindStretches();
        NumberSize = Math.Clamp(cell * Look.NumberPart, Look.LeastNumber, Look.MostNumber);
        var digits = _numbers.Max().ToString(CultureInfo.InvariantCulture).Length;
        Side = (NumberSize * 0.62 * digits) + ArrowLength + 2.2;
        var lines = legend ? ChartLegend.Lines(this, wording) : [];
        LegendHeight = lines.Count * LegendLine;
        LegendWidth = lines.Select(line => ChartLegend.WidthOf(line, TextSize)).DefaultIfEmpty(0).Max();
        Left = Side;
        Top = LegendHeight;
        _rowTop = PlaceRows();
        GridWidth = X(window.FirstColumn + window.Columns - 1) + cell - Left;
        GridHeight = Stretches.Count == 0 ? 0 : _rowTop[0] + cell - Top;
        var balance = ShowsBalance ? wording.BalanceLabel(BalanceColumns.Count).Length * TextSize * 0.5 : 0;
        HasBalanceBeside = ShowsBalance && Look.ShortLegend && balance + BalanceGap <= X(BalanceColumns.First);
        BalanceLabelRight = !ShowsBalance ? 0 : HasBalanceBeside ? X(BalanceColumns.First) - BalanceGap : Math.Max(Right, balance);
        BracketWidth = !ShowsBrackets ? 0 : Stretches.Where(HasBracket)
            .Select(s => look is { BareBrackets: true } ? BracketGap / 2 : BracketGap + (BracketLines(s, wording).Max(line => line.Length) * TextSize * BracketPart)).DefaultIfEmpty(0).Max();
    }

    public Piece Piece { get; }

    public ChartWindow Window { get; }

    /// <summary>Side of a cell.</summary>
    public double Cell { get; }

    /// <summary>How it is lettered and inked.</summary>
    public ChartLook Look { get; }

    /// <summary>Em of the words at brackets.</summary>
    public double TextSize => Look.Text;

    /// <summary>Height of a line of the legend.</summary>
    public double LegendLine => LegendPart * TextSize;

    /// <summary>Em of row and end numbers.</summary>
    public double NumberSize { get; }

    /// <summary>Space at each side for row numbers and arrows.</summary>
    public double Side { get; }

    public double Left { get; }

    public double Top { get; }

    public double GridWidth { get; }

    public double GridHeight { get; }

    public double Right => Left + GridWidth;

    public double Bottom => Top + GridHeight;

    /// <summary>Height of the legend, 0 without one.</summary>
    public double LegendHeight { get; }

    /// <summary>Width of the legend, 0 without one.</summary>
    public double LegendWidth { get; }

    public double ArrowLength => Math.Clamp(Cell * 0.6, 2, 3.6);

    /// <summary>Space at the right for the brackets of repeated and closing rows.</summary>
    public double BracketWidth { get; }

    /// <summary>Space below for end numbers and the bracket of balance ends.</summary>
    public double Foot => NumberSize + 1.8 + (!ShowsBalance ? 0 : HasBalanceBeside ? 2.6 : 2.4 * TextSize);

    /// <summary>Whether the label of the balance ends stands at the left of its bracket rather than under it.</summary>
    public bool HasBalanceBeside { get; }

    public double Width => Math.Max(Math.Max(Right + Side + BracketWidth, Left + LegendWidth), BalanceLabelRight);

    /// <summary>Where the label of the balance ends ends: at the right of the grid, or further where the grid is too narrow for it, or at the left of the bracket; 0 without balance ends.</summary>
    public double BalanceLabelRight { get; }

    public double Height => Bottom + Foot;

    /// <summary>Whether brackets stand at the right: only where the window reaches the last end.</summary>
    public bool ShowsBrackets => Window.FirstColumn + Window.Columns == Piece.Ends;

    /// <summary>Whether balance ends are in the window.</summary>
    public bool ShowsBalance => BalanceColumns.Count > 0;

    /// <summary>First column and count of the balance ends inside the window.</summary>
    public (int First, int Count) BalanceColumns
    {
        get
        {
            var end = Piece.FloatingPerSide + Piece.PatternEnds;
            var first = Math.Max(end - Piece.Document.Width.Balance, Window.FirstColumn);
            return (first, Math.Max(0, Math.Min(end, Window.FirstColumn + Window.Columns) - first));
        }
    }

    public Sequence<ChartStretch> Stretches { get; }

    /// <summary>The number of the printed row at an index inside the window, from 0 at the bottom.</summary>
    public int Number(int index) => _numbers[index];

    /// <summary>The left edge of a column (from 0 at the left of the piece).</summary>
    public double X(int column)
    {
        var gaps = 0;
        if (Piece.FloatingPerSide > 0)
        {
            gaps += column > 0 && Window.FirstColumn == 0 ? 1 : 0;
            gaps += column == Piece.Ends - 1 && column > Window.FirstColumn ? 1 : 0;
        }

        return Left + ((column - Window.FirstColumn) * Cell) + (gaps * FloatingGap);
    }

    /// <summary>The top edge of a printed row at an index inside the window.</summary>
    public double Y(int index) => _rowTop[index];

    /// <summary>Whether a stretch gets a bracket: repeated and closing rows do.</summary>
    public static bool HasBracket(ChartStretch stretch)
    {
        ArgumentNullException.ThrowIfNull(stretch);
        return stretch.Band.Kind != BandKind.Once;
    }

    /// <summary>What stands at the bracket of a stretch.</summary>
    public static string BracketLabel(ChartStretch stretch, Wording wording)
    {
        ArgumentNullException.ThrowIfNull(stretch);
        ArgumentNullException.ThrowIfNull(wording);
        return stretch.Band.Kind == BandKind.Closing ? wording.ClosingLabel : wording.PrintedTimeText(stretch.Band, stretch.PrintedTime);
    }

    /// <summary>The lines in which the words at a bracket stand.</summary>
    public Sequence<string> BracketLines(ChartStretch stretch, Wording wording)
    {
        ArgumentNullException.ThrowIfNull(stretch);
        var label = BracketLabel(stretch, wording);
        var words = label.Split(' ');
        var most = Math.Max(words.Max(word => word.Length), 6);
        var lines = new List<string> { words[0] };
        foreach (var word in words.Skip(1))
        {
            if (lines[^1].Length + 1 + word.Length <= most)
            {
                lines[^1] += " " + word;
            }
            else
            {
                lines.Add(word);
            }
        }

        // Whether they fit must not change with the cell, or a larger cell could be narrower than a smaller one.
        return Look.NarrowBrackets && lines.Count * BracketLine <= stretch.Rows * Math.Max(4, TextSize) ? lines.ToSequence() : [label];
    }

    /// <summary>Height of a line of the words at brackets.</summary>
    public double BracketLine => 1.15 * TextSize;

    /// <summary>Stretches of columns between gaps: first column and count.</summary>
    public IEnumerable<(int First, int Count)> ColumnStretches()
    {
        var cuts = new SortedSet<int> { Window.FirstColumn, Window.FirstColumn + Window.Columns };
        if (Piece.FloatingPerSide > 0)
        {
            cuts.UnionWith(new[] { 1, Piece.Ends - 1 }.Where(c => c > Window.FirstColumn && c < Window.FirstColumn + Window.Columns));
        }

        return cuts.Zip(cuts.Skip(1), (from, to) => (from, to - from));
    }

    private double[] PlaceRows()
    {
        var tops = new double[_numbers.Length];
        var y = Top;
        foreach (var stretch in Stretches.Reverse())
        {
            for (var index = stretch.First + stretch.Rows - 1; index >= stretch.First; index--)
            {
                tops[index] = y;
                y += Cell;
            }

            y += StretchGap;
        }

        return tops;
    }

    private Sequence<ChartStretch> FindStretches()
    {
        var stretches = new List<ChartStretch>();
        for (var index = 0; index < _numbers.Length; index++)
        {
            var band = Piece.Bands[Piece.BandOf(_numbers[index])];
            var time = ((_numbers[index] - band.FirstRow) / band.RowsEachTime) + 1;
            if (stretches.LastOrDefault() is { } last && last.Band == band && last.PrintedTime == time)
            {
                stretches[^1] = last with { Rows = last.Rows + 1 };
            }
            else
            {
                stretches.Add(new ChartStretch(band, time, index, 1));
            }
        }

        return stretches.ToSequence();
    }
}
