namespace PatternShop.Weave;

/// <summary>One thing that is wrong with input, said so that a person can mend it.</summary>
/// <param name="Code">A stable name of the kind of problem, such as "row-length".</param>
/// <param name="Pointer">Where, as a JSON pointer (RFC 6901) into the document; empty for the whole.</param>
/// <param name="Line">Line in the file, from 1; 0 when there is no file.</param>
/// <param name="Column">Column in the line in characters, from 1; 0 when there is no file.</param>
/// <param name="What">What is wrong.</param>
/// <param name="Remedy">What to do about it.</param>
public sealed record Problem(string Code, string Pointer, int Line, int Column, string What, string Remedy);
