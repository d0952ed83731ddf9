namespace PatternShop.Web;

/// <summary>One of a few things to choose from, in words.</summary>
public sealed record Choice<T>(T Value, string Words);
