namespace PatternShop.Weave;

/// <summary>How JSON writes numbers (RFC 8259, section 6).</summary>
internal static class JsonNumberForm
{
    /// <summary>Whether a token, at least one byte, is a number: no leading zeros, digits on both sides of a point.</summary>
    public static bool IsNumber(ReadOnlySpan<byte> token)
    {
        var at = token[0] == '-' ? 1 : 0;
        var whole = Digits(token, at);
        if (whole == 0 || (whole > 1 && token[at] == '0'))
        {
            return false;
        }

        at += whole;
        if (at < token.Length && token[at] == '.')
        {
            var fraction = Digits(token, at + 1);
            if (fraction == 0)
            {
                return false;
            }

            at += 1 + fraction;
        }

        return at == token.Length || IsExponent(token[at..]);
    }

    private static bool IsExponent(ReadOnlySpan<byte> token)
    {
        var sign = token.Length > 1 && token[1] is (byte)'+' or (byte)'-' ? 2 : 1;
        var digits = Digits(token, sign);
        return token[0] is (byte)'e' or (byte)'E' && digits > 0 && sign + digits == token.Length;
    }

    private static int Digits(ReadOnlySpan<byte> token, int at)
    {
        var count = 0;
        while (at + count < token.Length && char.IsAsciiDigit((char)token[at + count]))
        {
            count++;
        }

        return count;
    }
}
