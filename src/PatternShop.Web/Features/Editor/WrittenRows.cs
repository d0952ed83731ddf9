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
/// <param name="Text">What is seen; in words it breaks only between runs.</param>
/// <param name="Spoken">Other words for ears, where there are brackets; null where the text does.</param>
internal readonly record struct WrittenRow(int Number, string Text, string? Spoken);

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
                (line.Text, line.Spoken) = (null, null);
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
        Lines(_piece!.PrintedRows().Take(rows), write: true).Select(static row => new WrittenRow(row.Number, row.Line.Text!, row.Line.Spoken));

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
                    (line.Text, line.Spoken) = Written(reading);
                }
            }

            yield return (number, line);
        }
    }

    private (string Text, string? Spoken) Written(Reading reading) => _form switch
    {
        WrittenForm.Motif => (words.MotifText(ByMotif.Of(_piece!, reading)), null),
        WrittenForm.Short => (words.ShortText(reading.Writing), null),
        _ => (Unbroken(words.WritingText(reading.Writing)), reading.Writing.Depth > 0 ? words.SpokenText(reading.Writing) : null),
    };

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

        public string? Spoken { get; set; }
    }
}
