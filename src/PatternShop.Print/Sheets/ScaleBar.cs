using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>A bar of 100 mm with a rule of 4 inches under it, by which a reader sees whether a sheet was printed at its size.</summary>
internal static class ScaleBar
{
    /// <summary>Length of the bar in millimetres.</summary>
    public const double Length = 100;

    private const int Inches = 4;
    private const double MillimetresPerInch = 25.4;
    private const double Step = 10;
    private const double Thickness = 1.2;
    private const double TextGap = 3;
    private const double Grey = 0.1;

    /// <summary>How high bar and words are.</summary>
    public static double HeightOf(TextStyle style, double width, Wording wording) =>
        Beside(style, width) ? Math.Max(2, Words(style, width, wording).Count) * style.LineHeight : (1 + Words(style, width, wording).Count) * style.LineHeight;

    /// <summary>The marks; the left end of the bar is at the left, its top below.</summary>
    public static IEnumerable<Placed> Of(TextStyle style, double width, Wording wording)
    {
        var beside = Beside(style, width);
        var middle = beside ? style.LineHeight : style.LineHeight / 2;
        var steps = Enumerable.Range(0, (int)(Length / Step)).Where(i => i % 2 == 0)
            .Select(i => Rectangle(i * Step, middle - Thickness, Step, Thickness)).ToSequence();
        yield return new Placed(new AreaMark(0, 0, steps, Grey), null);
        yield return new Placed(new StrokeMark(0, 0, [Rectangle(0, middle - Thickness, Length, Thickness)], true, 0.15, Grey), null);
        yield return new Placed(new StrokeMark(0, middle, Ticks(), false, 0.15, Grey), null);
        foreach (var mark in beside ? Labels(style, middle) : Label(style, middle))
        {
            yield return mark;
        }

        var lines = Words(style, width, wording);
        for (var i = 0; i < lines.Count; i++)
        {
            var (x, y) = beside ? (Left, (i * style.LineHeight) + style.Baseline) : (0, ((i + 1) * style.LineHeight) + style.Baseline);
            foreach (var mark in TextLine.Set(lines[i], x, y, style, null))
            {
                yield return mark;
            }
        }

        // in large letters both lengths stand at the right of bar and rule, in their order
        IEnumerable<Placed> Label(TextStyle labels, double at) =>
            TextLine.Set($"{wording.MillimetresText((int)Length)} / {wording.InchesText(Inches)}", Left, at + (0.35 * labels.Em), labels, null);

        IEnumerable<Placed> Labels(TextStyle labels, double at) =>
        [
            .. TextLine.Set(wording.MillimetresText((int)Length), 0, at - Thickness - 0.8, labels, null),
            .. TextLine.Set(wording.InchesText(Inches), 1, at + 1.2 + (0.75 * labels.Em), labels, null),
        ];
    }

    private static double Left => (Inches * MillimetresPerInch) + TextGap;

    private static bool Beside(TextStyle style, double width) => width - Left > 14 * style.Em;

    private static Sequence<string> Words(TextStyle style, double width, Wording wording) =>
        Beside(style, width) ? Lettering.Lines(wording.ScaleText, style, width - Left) : Lettering.Lines(wording.ShortScaleText, style, width);

    private static Sequence<Sequence<Spot>> Ticks() =>
    [
        [new Spot(0, 0.6), new Spot(Inches * MillimetresPerInch, 0.6)],
        .. Enumerable.Range(0, Inches + 1).Select(inch => Sequence.Of<Spot>([new Spot(inch * MillimetresPerInch, 0.6), new Spot(inch * MillimetresPerInch, 2)])),
    ];

    private static Sequence<Spot> Rectangle(double x, double y, double width, double height) =>
        [new(x, y), new(x + width, y), new(x + width, y + height), new(x, y + height)];
}
