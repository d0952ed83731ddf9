namespace PatternShop.Web;

/// <summary>The samples as static pages, with everything that a reader can fetch.</summary>
internal static class SampleEndpoints
{
    private static readonly string[] FileNames = ["a4.pdf", "letter.pdf", "chart.svg", "directions.txt"];

    public static void MapSamples(this IEndpointRouteBuilder routes)
    {
        routes.MapPage("/samples", () => new HtmlPage<SamplesPage>([]));
        routes.MapPage("/samples/{name}", Page);
        routes.MapPage("/samples/{name}/{file}", File);
    }

    private static IResult Page(string name, SampleShelf shelf, PieceFiles files)
    {
        if (shelf.Find(name) is not { } sample)
        {
            return Unknown();
        }

        var links = files.Of(sample.Piece).Where(file => FileNames.Contains(file.Kind))
            .Select(file => new FileLink(file.Title, $"/samples/{name}/{file.Kind}", file.MediaType, file.Bytes.Length))
            .ToList();
        return new HtmlPage<SamplePage>(new Dictionary<string, object?>(StringComparer.Ordinal)
        {
            [nameof(SamplePage.Sample)] = sample,
            [nameof(SamplePage.Files)] = links,
        });
    }

    private static IResult File(string name, string file, SampleShelf shelf, PieceFiles files) =>
        shelf.Find(name) is not { } sample ? Unknown()
            : files.Of(sample.Piece).FirstOrDefault(made => made.Kind == file) is { } found
                ? Results.File(found.Bytes, found.MediaType, found.Kind.EndsWith(".pdf", StringComparison.Ordinal) ? $"{name}.{file}" : null)
                : Results.NotFound();

    /// <summary>
    /// Leads from an address under the name of no sample to the list of samples. Names change with the program, so the redirect is a
    /// temporary one: browsers would remember a permanent one and never ask for a later sample of that name.
    /// </summary>
    internal static IResult Unknown() => Results.LocalRedirect("/samples");
}
