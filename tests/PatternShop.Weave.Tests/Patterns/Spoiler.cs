using System.Text;

namespace PatternShop.Weave.Tests;

/// <summary>Spoils files a little: bytes here and there, or whole tokens of JSON. What it does follows from the seed alone.</summary>
public sealed class Spoiler(int seed)
{
    private static readonly byte[][] Pieces =
    [
        .. new[]
        {
            "{", "}", "[", "]", ",", ":", "\"", "\\", "null", "true", "0", "1", "2", "3", "7", "-1", "1.5", "1e9", "2147483647", "99999999999", "100001",
            "\"\"", "\"x\"", "\"x.x.\"", "\"4\"", "\"4.12345\"", "\"0\"", "\"left\"", "\"right\"", "\"own\"", "\"working\"", "\"over\"", "\"bars\"", "\"in\"",
            "\"step\"", "\"chart\"", "\"plain\"", "\"stitch\"", "\"repeat\"", "\"weft\"", "\"from\"", "\"steps\"", "\"title\"", "\"format\"", "\"start\"",
            "[]", "{}", "[[[[[[[[[[[[[[[[[[", "\\u0000", "\\ud800", "\\n", "\u2028", "😀", "\r\n", " ", "{\"step\":\"plain\",\"count\":2}",
        }.Select(Encoding.UTF8.GetBytes),
        [0xFF],
        [0xC3],
        [0x00],
        [0xEF, 0xBB, 0xBF],
    ];

    private readonly Random _random = new(seed);

    public byte[] Spoil(byte[] good)
    {
        var spoilt = good.ToList();
        for (var times = Math.Max(1, _random.Next(-6, 4)); times > 0; times--)
        {
            Once(spoilt);
        }

        return [.. spoilt];
    }

    private void Once(List<byte> file)
    {
        switch (_random.Next(12))
        {
            case 0:
                Replace(file, Any(file), 1, [(byte)_random.Next(256)]);
                break;
            case 1:
                Replace(file, Any(file), 0, Pieces[_random.Next(Pieces.Length)]);
                break;
            case 2:
                Replace(file, Any(file), _random.Next(1, 20), []);
                break;
            case 3:
                var from = Any(file);
                Replace(file, Any(file), 0, file.Skip(from).Take(_random.Next(1, 60)).ToArray());
                break;
            case 4:
                OtherToken(file, Pieces[_random.Next(Pieces.Length)]);
                break;
            case 5:
                var (start, length) = AnyToken(file).GetOffsetAndLength(file.Count);
                OtherToken(file, [.. file.GetRange(start, length)]);
                break;
            case 6 or 7:
                OtherCell(file);
                break;
            case 8 or 9:
                OtherDigit(file);
                break;
            default:
                Space(file);
                break;
        }
    }

    private int Any(List<byte> file) => _random.Next(file.Count + 1);

    // from one quotation mark to the next, or a number, a word or a single mark
    private Range AnyToken(List<byte> file)
    {
        var at = Math.Min(Any(file), file.Count - 1);
        if (_random.Next(2) == 0 && at >= 0 && file.LastIndexOf((byte)'"', at) is >= 0 and var open && file.IndexOf((byte)'"', open + 1) is > 0 and var close)
        {
            return open..(close + 1);
        }

        var (start, end) = (Math.Max(at, 0), Math.Max(at, 0));
        while (start > 0 && char.IsAsciiLetterOrDigit((char)file[start - 1]))
        {
            start--;
        }

        while (end < file.Count && char.IsAsciiLetterOrDigit((char)file[end]))
        {
            end++;
        }

        return start..Math.Min(Math.Max(end, start + 1), file.Count);
    }

    private void OtherToken(List<byte> file, byte[] piece)
    {
        var token = AnyToken(file).GetOffsetAndLength(file.Count);
        Replace(file, token.Offset, token.Length, piece);
    }

    private void Space(List<byte> file)
    {
        var at = file.FindIndex(Any(file), unit => unit is (byte)',' or (byte)':' or (byte)'}' or (byte)']');
        Replace(file, Math.Max(at, 0), 0, " \n"u8);
    }

    private void OtherCell(List<byte> file)
    {
        var at = file.FindIndex(Any(file), unit => unit is (byte)'x' or (byte)'.');
        if (at >= 0)
        {
            file[at] = file[at] == 'x' ? (byte)'.' : (byte)'x';
        }
    }

    private void OtherDigit(List<byte> file)
    {
        var at = file.FindIndex(Any(file), unit => unit is >= (byte)'0' and <= (byte)'9');
        if (at >= 0)
        {
            file[at] = (byte)('0' + _random.Next(10));
        }
    }

    private static void Replace(List<byte> file, int start, int length, ReadOnlySpan<byte> piece)
    {
        file.RemoveRange(start, Math.Min(length, file.Count - start));
        file.InsertRange(start, piece.ToArray());
    }
}
