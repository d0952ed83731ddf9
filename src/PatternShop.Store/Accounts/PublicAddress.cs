namespace PatternShop.Store;

/// <summary>The address under which readers reach the shop: what QR codes, canonical links and printed pages point to.</summary>
public static class PublicAddress
{
    private const string Field = "PublicAddress";

    /// <summary>The address in its one form, such as "https://patterns.example.org", or what is wrong with it.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="address">Scheme, host and port, without a slash at the end.</param>
    public static FieldProblem? Read(string? text, out string address)
    {
        address = "";
        if (!Uri.TryCreate(text?.Trim(), UriKind.Absolute, out var uri) || uri.Scheme is not ("http" or "https") || uri.Host.Length == 0)
        {
            return new(Field, "That is not a web address.", "Write it in full, such as https://patterns.example.org.");
        }

        if (uri.PathAndQuery != "/" || uri.Fragment.Length > 0 || uri.UserInfo.Length > 0)
        {
            return new(Field, "The public address holds more than a scheme, a host and a port.", "Leave out what stands after the host.");
        }

        if (uri.Scheme != "https" && !uri.IsLoopback)
        {
            return new(Field, "The public address begins with http.", "Use https; http is for this machine only.");
        }

        var host = uri.HostNameType == UriHostNameType.IPv6 ? $"[{uri.IdnHost}]" : uri.IdnHost;
        address = uri.IsDefaultPort ? $"{uri.Scheme}://{host}" : FormattableString.Invariant($"{uri.Scheme}://{host}:{uri.Port}");
        return null;
    }
}
