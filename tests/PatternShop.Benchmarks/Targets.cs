using System.Globalization;

namespace PatternShop.Benchmarks;

/// <summary>Something that the measured cases are asked to show.</summary>
internal abstract record Target(string Class)
{
    /// <summary>Every target.</summary>
    public static IReadOnlyList<Target> All { get; } =
    [
        new Faster("Hangs together", "ours", "graph library, graph made before", "1000 × 1000", 50),
        new Growth("Hangs together", "ours", 1.1),
        new Growth("Symmetry", "symmetries", 1.1),
        new Growth("Symmetry", "periods", 1.1),
        new Growth("Symmetry", "ways to mirror", 1.1),
        .. new[] { "without order", "a motif four times", "repeating at many lengths" }.SelectMany(row => new Target[] { new Within("Writing", row, "60 runs", 1000), new Within("Writing", row, "400 runs", 20_000) }),
        .. new[] { "readings and directions, cells without order", "readings and directions, a motif twenty times across", "all of it, cells without order", "all of it, a motif twenty times across" }.SelectMany(piece => new Target[] { new Within("Piece", piece, "400 × 600", 16_000), new Growth("Piece", piece, 1.1) }),
        new Growth("Checks", "findings", 1.1),
        .. new[] { "100 × 100 twill", "100 × 100 without order" }.SelectMany(size => new Target[]
        {
            new Faster("Chart page", "joined cells (ours)", "one rectangle a cell", size, 2),
            new Smaller("Chart page", "joined cells (ours)", "one rectangle a cell", size, 0.4),
        }),
        new Faster("Edition", "a complete A4 edition (ours)", "headless Chromium prints the page", "23 × 20", 10),
        new Within("Large edition", "a complete A4 edition", "400 × 600", 2_000_000),
        new Allocates("Large edition", "a complete A4 edition", "400 × 600", 200_000_000),
        new Within("History", "undo or redo, in the store", "1000 steps", 8_000),
        .. DrawingTargets.All,
    ];

    /// <summary>What is asked.</summary>
    public abstract string Text { get; }

    /// <summary>What was measured, from "met: " or "MISSED: " on; "not measured" where cases are missing.</summary>
    public string Verdict(IReadOnlyList<Measured> cases, IReadOnlyList<Figure> figures) =>
        Judge([.. cases.Where(measured => measured.Class == Class)], [.. figures.Where(figure => figure.Class == Class)]) is { } judged ? (judged.Met ? "met: " : "MISSED: ") + judged.Said : "not measured";

    protected virtual (bool Met, string Said)? Judge(IReadOnlyList<Measured> cases) => null;

    protected virtual (bool Met, string Said)? Judge(IReadOnlyList<Measured> cases, IReadOnlyList<Figure> figures) => Judge(cases);

    protected static double? Median(IReadOnlyList<Measured> cases, string name, string size) =>
        cases.FirstOrDefault(measured => measured.Case == name && measured.Size == size)?.Median;

    protected static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}

/// <summary>One case is so many times as fast as another of the same size.</summary>
internal sealed record Faster(string Class, string Case, string Than, string Size, double Times) : Target(Class)
{
    public override string Text => $"{Class}, {Size}: {Case} at least {Number(Times)} times as fast as {Than}";

    protected override (bool Met, string Said)? Judge(IReadOnlyList<Measured> cases) =>
        Median(cases, Than, Size) / Median(cases, Case, Size) is { } times ? (times >= Times, $"{Number(times)} times") : null;
}

/// <summary>From 100 × 100 to 1000 × 1000 the time grows no faster than the number of cells to a power.</summary>
internal sealed record Growth(string Class, string Case, double Power) : Target(Class)
{
    public override string Text => $"{Class}: {Case} from 100 × 100 to 1000 × 1000 no faster than cells^{Number(Power)}";

    protected override (bool Met, string Said)? Judge(IReadOnlyList<Measured> cases) =>
        Median(cases, Case, "1000 × 1000") / Median(cases, Case, "100 × 100") is { } grown
            ? (Math.Log(grown, 100) <= Power, $"cells^{Number(Math.Log(grown, 100))}")
            : null;
}

/// <summary>A case takes no longer.</summary>
internal sealed record Within(string Class, string Case, string Size, double Microseconds) : Target(Class)
{
    public override string Text => $"{Class}{(Size.Length > 0 ? ", " : "")}{Size}: {Case} within {Number(Microseconds / 1000)} ms";

    protected override (bool Met, string Said)? Judge(IReadOnlyList<Measured> cases) =>
        Median(cases, Case, Size) is { } median ? (median <= Microseconds, $"{Number(median / 1000)} ms") : null;
}

/// <summary>The file that one case makes is so much smaller than that of another of the same size.</summary>
internal sealed record Smaller(string Class, string Case, string Than, string Size, double Part) : Target(Class)
{
    public override string Text => $"{Class}, {Size}: {Case} in at most {Number(Part)} of the bytes of {Than}";

    protected override (bool Met, string Said)? Judge(IReadOnlyList<Measured> cases) =>
        Bytes(cases, Case, Size) is var ours and > 0 && Bytes(cases, Than, Size) is var theirs and > 0 ? (ours <= Part * theirs, $"{Number(ours / (double)theirs)}") : null;

    private static int Bytes(IReadOnlyList<Measured> cases, string name, string size) => cases.FirstOrDefault(measured => measured.Case == name && measured.Size == size)?.Bytes ?? 0;
}

/// <summary>A case allocates no more memory in all, so that it never holds more.</summary>
internal sealed record Allocates(string Class, string Case, string Size, double Bytes) : Target(Class)
{
    public override string Text => $"{Class}, {Size}: {Case} within {Number(Bytes / 1e6)} MB, all that is allocated counted";

    protected override (bool Met, string Said)? Judge(IReadOnlyList<Measured> cases) =>
        cases.FirstOrDefault(measured => measured.Case == Case && measured.Size == Size) is { } found ? (found.Kilobytes * 1024 <= Bytes, $"{Number(found.Kilobytes * 1024 / 1e6)} MB") : null;
}
