using Microsoft.AspNetCore.Http;
using PatternShop.Tests.Shared;
using PatternShop.Weave;

namespace PatternShop.Web.Tests;

/// <summary>A pattern whose every word tries to become markup.</summary>
internal static class Hostile
{
    public const string Title = """<script>alert('t')</script>"><img src=x onerror="alert(1)">&amp;""";
    public const string Notes = "</p><script>alert('n')</script>\n<svg onload='alert(2)'><style>*{color:red}</style>\n<!-- ]]> &lt;b&gt;";
    public const string Licence = """</article><iframe src="javascript:alert(3)"></iframe>'"><a href=javascript:alert(4)>""";
    public const string Stitch = """</text></svg><script>alert('s')</script>""";

    public static PatternDocument Document { get; } =
        Charts.Document(Charts.TenEndDiamond, repeats: 2, balance: 1, steps: [new EdgeStitch(Stitch, StitchYarn.Own, 1, Side.Left, 1), new ChartRows(1, 10, 1)]) with
        {
            Title = Title,
            Notes = Notes,
            Licence = Licence,
        };

    public static Sample Sample { get; } = new("hostile", Document, Piece.Of(Document), PatternWriter.CanonicalBytes(Document));

    public static IResult Page() => new HtmlPage<SamplePage>(new Dictionary<string, object?>(StringComparer.Ordinal)
    {
        [nameof(SamplePage.Sample)] = Sample,
        [nameof(SamplePage.Files)] = Array.Empty<FileLink>(),
    });
}
