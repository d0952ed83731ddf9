using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>How rows are written.</summary>
internal enum WrittenForm
{
    Words,
    Motif,
    Short,
}

/// <summary>A row as it is written.</summary>
/// <param name="Number">The row's number, from 1.</param>
/// <param name="Text">What is seen, in words breaking only between runs; markup where ears are given other words, because there are brackets.</param>
/// <param name="IsMarkup">Whether the text is markup.</param>
internal readonly record struct WrittenRow(int Number, string Text, bool IsMarkup);

/// <summary>
/// The printed rows of an open pattern as texts. Readings are many times the size of the chart, and an open pattern must not cost the
/// server megabytes: a row is read when its text is wanted, and of the reading nothing is kept. Most rows read as before a stroke and
/// keep their text.
/// </summary>
internal sealed class WrittenRows(Wording words)
{
    private const int RowsAtOnce = 200;
    private const int ItemsAtOnce = 2500;
    private readonly Dictionary<int, Line> _lines = [];
    private Piece? _piece;
    private WrittenForm _form;

    /// <summary>How many printed rows there are.</summary>
    public int Printed { get; private set; }

    /// <summary>Takes over the present piece, and forgets what no longer holds.</summary>
    public void Take(Piece piece, WrittenForm form)
    {
        var isWrittenAlike = _form == form && _piece?.Document.Width == piece.Document.Width;
        foreach (var (number, line) in _lines)
        {
            if (!ReadsAlike(_piece!, piece, number))
            {
                _lines.Remove(number);
            }
            else if (!isWrittenAlike)
            {
                line.Text = null;
            }
        }

        (_piece, _form, Printed) = (piece, form, piece.Bands.Sum(band => band.PrintedRows));
    }

    /// <summary>Rows in so many parts. A part is so many rows, or fewer where there is much to read in each.</summary>
    public int RowsOf(int parts)
    {
        var (rows, items) = (0, 0);
        foreach (var (_, line) in Lines(_piece!.PrintedRows().Take(parts * RowsAtOnce), write: false))
        {
            items += line.Length;
            if (items > parts * ItemsAtOnce && rows > 0)
            {
                break;
            }

            rows++;
        }

        return rows;
    }

    /// <summary>The first rows.</summary>
    public IEnumerable<WrittenRow> First(int rows) =>
        Lines(_piece!.PrintedRows().Take(rows), write: true).Select(static row => new WrittenRow(row.Number, row.Line.Text!, row.Line.IsMarkup));

    private IEnumerable<(int Number, Line Line)> Lines(IEnumerable<int> numbers, bool write)
    {
        var read = _piece!.Reader();
        foreach (var number in numbers)
        {
            if (!_lines.TryGetValue(number, out var line) || (write && line.Text is null))
            {
                var reading = read(number);
                _lines[number] = line = new Line { Length = reading.Writing.Length };
                if (write)
                {
                    (line.Text, line.IsMarkup) = Written(reading);
                }
            }

            yield return (number, line);
        }
    }

    private (string Text, bool IsMarkup) Written(Reading reading) => _form switch
    {
        WrittenForm.Motif => (words.MotifText(ByMotif.Of(_piece!, reading)), false),
        WrittenForm.Short => (words.ShortText(reading.Writing), false),
        _ when reading.Writing.Depth > 0 => (Both(Unbroken(words.WritingText(reading.Writing)), words.SpokenText(reading.Writing)), true),
        _ => (Unbroken(words.WritingText(reading.Writing)), false),
    };

    // one piece of short markup (the style sheet hides the second): two elements would cost an open pattern and every stroke twice as much, for each row
    private static string Both(string text, string spoken) =>
        $"<span aria-hidden=\"true\">{Encoded(text)}</span><span>{Encoded(spoken)}</span>";

    private static string Encoded(string text) => text.Replace("&", "&amp;", StringComparison.Ordinal).Replace("<", "&lt;", StringComparison.Ordinal);

    // what a row reads follows from its cells, its travel and what is a motif
    private static bool ReadsAlike(Piece before, Piece now, int number)
    {
        if (ReferenceEquals(before, now))
        {
            return true;
        }

        if (number > now.Rows.Count || before.Ends != now.Ends || before.Document.Motif.Columns != now.Document.Motif.Columns)
        {
            return false;
        }

        var (old, row) = (before.Rows[number - 1], now.Rows[number - 1]);
        return old.From == row.From && before.Cells.RowWords(old.Reading).SequenceEqual(now.Cells.RowWords(row.Reading));
    }

    private static string Unbroken(string written) => string.Create(written.Length, written, static (signs, text) =>
    {
        for (var at = 0; at < signs.Length; at++)
        {
            signs[at] = text[at] == ' ' && at > 0 && text[at - 1] != ',' ? '\u00A0' : text[at];
        }
    });

    private sealed class Line
    {
        public required int Length { get; init; }

        public string? Text { get; set; }

        public bool IsMarkup { get; set; }
    }
}
