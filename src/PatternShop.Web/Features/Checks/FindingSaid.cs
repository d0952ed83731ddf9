using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>A finding in words, with what mends it.</summary>
public sealed record FindingSaid(Finding Finding, string What, string Why, Sequence<RemedySaid> Remedies);

/// <summary>What mends a finding, in words, and what follows from it.</summary>
public sealed record RemedySaid(Mend Edit, string Name, string After);
