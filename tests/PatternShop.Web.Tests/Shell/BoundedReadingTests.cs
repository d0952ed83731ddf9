using Xunit;

namespace PatternShop.Web.Tests;

public sealed class BoundedReadingTests
{
    [Theory]
    [InlineData(0, 0)]
    [InlineData(99_999, 99_999)]
    [InlineData(100_000, 100_000)]
    [InlineData(100_001, 100_001)]
    [InlineData(5_000_000, 100_001)]
    public async Task A_stream_is_read_to_its_end_or_one_byte_too_far(int length, int read)
    {
        await using var stream = new MemoryStream(new byte[length]);
        Assert.Equal(read, (await BoundedReading.BytesAsync(stream, 100_000, TestContext.Current.CancellationToken)).Length);
        Assert.Equal(read, stream.Position);
    }

    [Theory]
    [InlineData("", "", "")]
    [InlineData("four reeds\nmore", "four reeds", "more")]
    [InlineData("four\r\nmore", "four", "more")]
    [InlineData("four reeds", "four reeds", "")]
    [InlineData("four reeds and a comb\n", "four reeds ", "and a comb\n")]
    public async Task A_line_is_read_to_its_end_or_one_character_too_far(string text, string line, string rest)
    {
        using var reader = new StringReader(text);
        Assert.Equal(line, await BoundedReading.LineAsync(reader, 10));
        Assert.Equal(rest, await reader.ReadToEndAsync(TestContext.Current.CancellationToken));
    }
}
