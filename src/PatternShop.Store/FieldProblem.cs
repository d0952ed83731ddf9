namespace PatternShop.Store;

/// <summary>One thing that is wrong with what was typed into a form.</summary>
/// <param name="Field">The name of the property, such as "Passphrase".</param>
/// <param name="What">What is wrong.</param>
/// <param name="Remedy">What to do about it.</param>
public sealed record FieldProblem(string Field, string What, string Remedy);
