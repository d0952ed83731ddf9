using System.Buffers;
using System.Buffers.Text;
using System.Globalization;
using System.Text;
using PdfSharp.Pdf;
using PdfSharp.Pdf.Advanced;

namespace PatternShop.Print;

/// <summary>
/// Writes a graph of PDF objects as a file (ISO 32000-1, 7.5). Objects are numbered in the order in which they are met
/// from the catalog, dictionaries keep their order, streams are compressed by ourselves: nothing depends on chance.
/// </summary>
internal sealed class ObjectWriter
{
    // letters of names that need no other writing (7.3.5)
    private static readonly SearchValues<char> Plain = SearchValues.Create("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+-.,_:;*&!'\"");

    private readonly ArrayBufferWriter<byte> _out = new(1 << 16);
    private readonly Dictionary<PdfObject, int> _numbers = new(ReferenceEqualityComparer.Instance);
    private readonly List<PdfObject> _objects = [];

    private ObjectWriter()
    {
    }

    /// <param name="catalog">The root of the document.</param>
    /// <param name="information">The information dictionary.</param>
    /// <param name="identity">The file's id from all that stands before it.</param>
    public static byte[] Write(PdfDictionary catalog, PdfDictionary information, Func<ReadOnlySpan<byte>, byte[]> identity)
    {
        var writer = new ObjectWriter();
        writer.Append("%PDF-1.7\n%"u8);
        writer._out.Write<byte>([0xE2, 0xE3, 0xCF, 0xD3, (byte)'\n']);
        writer.NumberOf(catalog);
        writer.NumberOf(information);
        var offsets = new List<int>();
        for (var i = 0; i < writer._objects.Count; i++)
        {
            offsets.Add(writer._out.WrittenCount);
            writer.WriteObject(i + 1, writer._objects[i]);
        }

        writer.WriteEnd(offsets, Convert.ToHexString(identity(writer._out.WrittenSpan)));
        return writer._out.WrittenSpan.ToArray();
    }

    private void WriteObject(int number, PdfObject item)
    {
        Integer(number);
        Append(" 0 obj\n"u8);
        if (item is PdfDictionary { Stream: { } stream } dictionary)
        {
            WriteStream(dictionary, stream);
        }
        else
        {
            WriteItem(item);
        }

        Append("\nendobj\n"u8);
    }

    private void WriteStream(PdfDictionary dictionary, PdfDictionary.PdfStream stream)
    {
        var bytes = stream.Value;
        // What has a filter was packed by ourselves. Readers of metadata look for it without unpacking anything.
        if (!dictionary.Elements.ContainsKey("/Filter") && dictionary.Elements.GetName("/Type") != "/Metadata")
        {
            bytes = Flate.Pack(bytes);
            dictionary.Elements.SetName("/Filter", Flate.FilterName);
        }

        dictionary.Elements.SetInteger("/Length", bytes.Length);
        WriteDictionary(dictionary);
        Append("\nstream\n"u8);
        _out.Write(bytes);
        Append("\nendstream"u8);
    }

    private void WriteItem(PdfItem item)
    {
        switch (item)
        {
            case PdfReference reference:
                Integer(NumberOf(reference.Value));
                Append(" 0 R"u8);
                break;
            case PdfDictionary dictionary:
                WriteDictionary(dictionary);
                break;
            case PdfArray array:
                WriteArray(array);
                break;
            default:
                WriteValue(item);
                break;
        }
    }

    private void WriteValue(PdfItem item)
    {
        switch (item)
        {
            case PdfString text:
                WriteString(text.Value);
                break;
            case PdfName name:
                WriteName(name.Value);
                break;
            case PdfInteger number:
                Integer(number.Value);
                break;
            case PdfLongInteger number:
                Integer(number.Value);
                break;
            case PdfLiteral literal:
                Append(literal.Value);
                break;
            case PdfReal number:
                Format($"{number.Value:0.######}");
                break;
            case PdfBoolean truth:
                Append(truth.Value ? "true"u8 : "false"u8);
                break;
            case PdfRectangle r:
                Format($"[{r.X1:0.######} {r.Y1:0.######} {r.X2:0.######} {r.Y2:0.######}]");
                break;
            case PdfNull:
                Append("null"u8);
                break;
            default:
                throw new InvalidOperationException($"No way to write {item.GetType().Name}.");
        }
    }

    private void WriteDictionary(PdfDictionary dictionary)
    {
        Append("<<"u8);
        foreach (var (key, value) in dictionary.Elements)
        {
            if (value is not null)
            {
                WriteName(key);
                Append(" "u8);
                WriteItem(value);
                Append("\n"u8);
            }
        }

        Append(">>"u8);
    }

    private void WriteArray(PdfArray array)
    {
        Append("["u8);
        for (var i = 0; i < array.Elements.Count; i++)
        {
            Append(i == 0 ? ""u8 : " "u8);
            WriteItem(array.Elements[i]);
        }

        Append("]"u8);
    }

    // Text beyond ASCII goes as UTF-16 with its mark (7.9.2.2).
    private void WriteString(string text)
    {
        var bytes = text.All(c => c is >= ' ' and <= '~')
            ? Encoding.ASCII.GetBytes(text)
            : [0xFE, 0xFF, .. Encoding.BigEndianUnicode.GetBytes(text)];
        Format($"<{Convert.ToHexString(bytes)}>");
    }

    private void WriteName(string name)
    {
        var letters = name.StartsWith('/') ? name.AsSpan(1) : name;
        Append("/"u8);
        if (letters.IndexOfAnyExcept(Plain) < 0)
        {
            Append(letters);
            return;
        }

        foreach (var letter in Encoding.UTF8.GetBytes(letters.ToString()))
        {
            Append(letter < 0x80 && Plain.Contains((char)letter) ? $"{(char)letter}" : $"#{letter:X2}");
        }
    }

    private int NumberOf(PdfObject item)
    {
        if (!_numbers.TryGetValue(item, out var number))
        {
            _objects.Add(item);
            _numbers.Add(item, number = _objects.Count);
        }

        return number;
    }

    private void WriteEnd(List<int> offsets, string id)
    {
        var start = _out.WrittenCount;
        Format($"xref\n0 {offsets.Count + 1}\n0000000000 65535 f\r\n");
        foreach (var offset in offsets)
        {
            Format($"{offset:D10} 00000 n\r\n");
        }

        Format($"trailer\n<</Size {offsets.Count + 1} /Root 1 0 R /Info 2 0 R /ID [<{id}> <{id}>]>>\nstartxref\n{start}\n%%EOF\n");
    }

    private void Format(FormattableString text) => Append(text.ToString(CultureInfo.InvariantCulture));

    private void Integer(long value)
    {
        Utf8Formatter.TryFormat(value, _out.GetSpan(24), out var written);
        _out.Advance(written);
    }

    private void Append(ReadOnlySpan<char> text) => Encoding.ASCII.GetBytes(text, _out);

    private void Append(ReadOnlySpan<byte> text) => _out.Write(text);
}
