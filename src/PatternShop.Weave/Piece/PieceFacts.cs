using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace PatternShop.Weave;

/// <summary>Everything that a piece says about itself, as JSON for other programs; README.md documents the form.</summary>
public static class PieceFacts
{
    private static readonly JsonWriterOptions Options = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The facts as indented JSON with a final line feed.</summary>
    public static string Json(Piece piece, Wording wording)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(wording);
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, Options))
        {
            json.WriteStartObject();
            json.WriteString("title", piece.Document.Title);
            WriteInput(json, piece);
            WriteComputed(json, piece, wording);
            FindingFacts.Write(json, piece, wording);
            json.WriteStartArray("weavingOrder");
            foreach (var row in piece.Rows)
            {
                WriteRow(json, piece, row, wording);
            }

            json.WriteEndArray();
            WriteStitches(json, piece);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan) + "\n";
    }

    private static void WriteInput(Utf8JsonWriter json, Piece piece)
    {
        var document = piece.Document;
        json.WriteStartObject("input");
        json.WriteStartArray("chart");
        foreach (var row in GridText.Write(document.Motif))
        {
            json.WriteStringValue(row);
        }

        json.WriteEndArray();
        json.WriteNumber("repeats", document.Width.Repeats);
        json.WriteNumber("offset", document.Width.Offset);
        json.WriteNumber("balance", document.Width.Balance);
        json.WriteNumber("floating", piece.FloatingPerSide);
        WriteNullable(json, "edges", document.Width.Floating is { } floating ? Word(floating.Edges) : null);
        WriteNullable(json, "firstEdge", document.Width.Floating is { } edge ? Word(edge.First) : null);
        json.WriteString("start", Word(document.Rows.Wefts[0].Start));
        json.WriteStartArray("starts");
        foreach (var weft in document.Rows.Wefts)
        {
            json.WriteStringValue(Word(weft.Start));
        }

        json.WriteEndArray();
        json.WriteString("firstPlain", Word(document.Rows.FirstPlain));
        json.WriteStartArray("rowPlan");
        foreach (var step in document.Rows.Steps)
        {
            WriteStep(json, step);
        }

        json.WriteEndArray();
        WriteDensity(json, "sett", document.Gauge.Sett);
        WriteDensity(json, "rowDensity", document.Gauge.Rows);
        WriteLimits(json, document.Limits);
        json.WriteEndObject();
    }

    private static void WriteLimits(Utf8JsonWriter json, Limits? limits)
    {
        if (limits is null)
        {
            json.WriteNull("limits");
            return;
        }

        json.WriteStartObject("limits");
        if (limits.Threads is { } threads)
        {
            json.WriteNumber("threads", threads);
        }

        if (limits.Length is { } length)
        {
            WriteLength(json, "length", length);
        }

        json.WriteEndObject();
    }

    private static void WriteStep(Utf8JsonWriter json, RowStep step)
    {
        json.WriteStartObject();
        switch (step)
        {
            case ChartRows chart:
                json.WriteString("step", "chart");
                json.WriteNumber("first", chart.First);
                json.WriteNumber("last", chart.Last);
                json.WriteNumber("weft", chart.Weft);
                break;
            case PlainRows plain:
                json.WriteString("step", "plain");
                json.WriteNumber("count", plain.Count);
                json.WriteNumber("weft", plain.Weft);
                break;
            case EdgeStitch stitch:
                WriteStitchStep(json, stitch);
                break;
            case Repeat repeat:
                json.WriteString("step", "repeat");
                json.WriteNumber("times", repeat.Times);
                json.WriteStartArray("steps");
                foreach (var inner in repeat.Steps)
                {
                    WriteStep(json, inner);
                }

                json.WriteEndArray();
                break;
            default:
                throw new InvalidOperationException($"No rule for {step.GetType().Name}.");
        }

        json.WriteEndObject();
    }

    private static void WriteStitchStep(Utf8JsonWriter json, EdgeStitch stitch)
    {
        json.WriteString("step", "stitch");
        json.WriteString("name", stitch.Name);
        json.WriteString("yarn", stitch.Yarn == StitchYarn.Own ? "own" : "working");
        json.WriteNumber("across", stitch.Across);
        if (stitch.Yarn == StitchYarn.Own)
        {
            json.WriteString("from", Word(stitch.From));
        }
        else
        {
            json.WriteNumber("weft", stitch.Weft);
        }
    }

    private static void WriteComputed(Utf8JsonWriter json, Piece piece, Wording wording)
    {
        json.WriteNumber("ends", piece.Ends);
        json.WriteNumber("patternEnds", piece.PatternEnds);
        json.WriteNumber("rows", piece.Rows.Count);
        WriteLength(json, "width", piece.WidthOnLoom());
        WriteLength(json, "length", piece.WovenLength());
        json.WriteString("endsRule", wording.EndsRule(piece));
        json.WriteString("rowsRule", wording.RowsRule(piece));
        json.WriteString("warpArithmetic", wording.WarpArithmetic(piece));
        WriteFloats(json, Floats.Longest(piece));
        json.WriteStartObject("turns");
        var turns = Turns.Of(piece).ToList();
        json.WriteNumber("count", turns.Count);
        json.WriteStartArray("notWrapped");
        foreach (var turn in turns.Where(turn => !turn.Wrapped))
        {
            json.WriteStartObject();
            json.WriteNumber("weft", turn.Weft);
            json.WriteNumber("row", turn.Row);
            json.WriteNumber("next", turn.Next);
            json.WriteString("side", Word(turn.Side));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
        WriteMirrors(json, piece);
        json.WriteStartArray("repeatedRows");
        foreach (var band in piece.Bands.Where(band => band.Kind == BandKind.Repeated))
        {
            json.WriteStartObject();
            json.WriteNumber("firstRow", band.FirstRow);
            json.WriteNumber("rows", band.RowsEachTime);
            json.WriteNumber("times", band.Times);
            json.WriteBoolean("odd", band.IsOdd);
            json.WriteBoolean("readsDifferently", band.RowsDiffer);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteFloats(Utf8JsonWriter json, LongestFloats floats)
    {
        json.WriteStartObject("longestFloats");
        json.WriteNumber("weftOver", floats.WeftOver);
        json.WriteNumber("weftUnder", floats.WeftUnder);
        json.WriteNumber("warpOver", floats.WarpOver);
        json.WriteNumber("warpUnder", floats.WarpUnder);
        json.WriteEndObject();
    }

    private static void WriteMirrors(Utf8JsonWriter json, Piece piece)
    {
        json.WriteBoolean("mirrored", Mirroring.IsMirrored(piece));
        json.WriteStartArray("mirrorWays");
        foreach (var way in Mirroring.Fewest(piece.Document.Motif))
        {
            json.WriteStartObject();
            json.WriteNumber("offset", way.Offset);
            json.WriteNumber("balance", way.Balance);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteRow(Utf8JsonWriter json, Piece piece, WovenRow row, Wording wording)
    {
        var reading = piece.Readings[row.Reading];
        json.WriteStartObject();
        json.WriteNumber("number", row.Number);
        WriteNullable(json, "chartRow", row.ChartRow);
        json.WriteNumber("weft", row.Weft);
        WriteNullable(json, "time", row.Time);
        json.WriteString("from", Word(row.From));
        var runs = string.Join(",", reading.Runs.Select(run =>
            string.Create(CultureInfo.InvariantCulture, $"[\"{Word(run.Stroke)}\",{run.Count}]")));
        json.WritePropertyName("runs");
        json.WriteRawValue($"[{runs}]");
        json.WriteString("text", wording.DirectionsText(reading));
        json.WriteEndObject();
    }

    private static void WriteStitches(Utf8JsonWriter json, Piece piece)
    {
        json.WriteStartArray("stitches");
        foreach (var woven in piece.Stitches)
        {
            json.WriteStartObject();
            json.WriteNumber("afterRow", woven.AfterRow);
            json.WriteString("name", woven.Stitch.Name);
            json.WriteString("yarn", woven.Stitch.Yarn == StitchYarn.Own ? "own" : "working");
            json.WriteNumber("across", woven.Stitch.Across);
            json.WriteString("from", Word(woven.From));
            WriteNullable(json, "time", woven.Time);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteLength(Utf8JsonWriter json, string name, Length length)
    {
        json.WriteStartObject(name);
        json.WriteString("amount", decimal.Round(length.Amount, 4, MidpointRounding.AwayFromZero).ToString("0.####", CultureInfo.InvariantCulture));
        json.WriteString("unit", length.Unit == LengthUnit.Inch ? "in" : "cm");
        json.WriteEndObject();
    }

    private static void WriteDensity(Utf8JsonWriter json, string name, Density density)
    {
        json.WriteStartObject(name);
        json.WriteString("amount", density.Amount.ToString(CultureInfo.InvariantCulture));
        json.WriteString("unit", density.Unit switch { DensityUnit.PerInch => "in", DensityUnit.PerCentimetre => "cm", _ => "10 cm" });
        json.WriteEndObject();
    }

    private static void WriteNullable(Utf8JsonWriter json, string name, string? value)
    {
        if (value is null)
        {
            json.WriteNull(name);
        }
        else
        {
            json.WriteString(name, value);
        }
    }

    private static void WriteNullable(Utf8JsonWriter json, string name, int? value)
    {
        if (value is { } number)
        {
            json.WriteNumber(name, number);
        }
        else
        {
            json.WriteNull(name);
        }
    }

    // The words of the file form, which stay the same in every language.
    private static string Word(Side side) => side == Side.Left ? "left" : "right";

    private static string Word(Stroke stroke) => stroke == Stroke.Over ? "over" : "under";

    private static string Word(EdgeWay way) => way == EdgeWay.Alike ? "alike" : "entering";
}
