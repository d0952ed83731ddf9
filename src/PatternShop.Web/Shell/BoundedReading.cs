using System.Text;

namespace PatternShop.Web;

/// <summary>Reads what somebody names or sends, however much there is of it, no further than it can matter.</summary>
internal static class BoundedReading
{
    private const int Portion = 64 * 1024;

    /// <summary>Reads a stream to its end, or one byte more than <paramref name="most"/>: enough to know that there is too much.</summary>
    /// <exception cref="IOException">It cannot be read.</exception>
    public static async Task<ReadOnlyMemory<byte>> BytesAsync(Stream stream, int most, CancellationToken cancellationToken)
    {
        using var read = new MemoryStream();
        var portion = new byte[Portion];
        while (read.Length <= most)
        {
            var wanted = (int)Math.Min(Portion, most + 1L - read.Length);
            var count = await stream.ReadAsync(portion.AsMemory(0, wanted), cancellationToken);
            if (count == 0)
            {
                break;
            }

            read.Write(portion, 0, count);
        }

        return read.GetBuffer().AsMemory(0, (int)read.Length);
    }

    /// <summary>Reads a line without its end, or one character more than <paramref name="most"/>.</summary>
    public static async Task<string> LineAsync(TextReader reader, int most)
    {
        var line = new StringBuilder();
        var one = new char[1];
        while (line.Length <= most && await reader.ReadAsync(one, 0, 1) == 1 && one[0] != '\n')
        {
            line.Append(one[0]);
        }

        return line.ToString().TrimEnd('\r');
    }
}
