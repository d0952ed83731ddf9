using PatternShop.Print;
using PatternShop.Store;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>The page on which a maker puts photos to a pattern. Only they see these pictures until a version or a preview shows them.</summary>
internal static class PhotoEndpoints
{
    public const string MediaType = "image/jpeg";

    /// <summary>For a picture that is looked at by itself: browsers lay it out with styles of their own.</summary>
    public static PolicyMetadata Policy { get; } =
        new("default-src 'none'; img-src 'self'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'");

    // more than is looked at: who sends a little too much is told so on the page, and not by a cut line
    private const long MostBytes = 3L * PhotoMaker.MostBytes;

    public static void MapPhotos(this IEndpointRouteBuilder studio)
    {
        studio.MapPage("/patterns/{id}/photos", GetAsync);
        studio.MapForm("/patterns/{id}/photos", AddSentAsync, MostBytes);
        studio.MapForm("/patterns/{id}/photos/change", ChangeSentAsync);
        studio.MapPage("/patterns/{id}/photos/{hash}.jpg", FileAsync).WithMetadata(Policy);
    }

    public static string Address(PatternId id) => MyPatterns.Address(id) + "/photos";

    private static async Task<IResult> GetAsync(string id, HttpContext http, PhotoRoom room) =>
        await MyPatterns.OpenAsync(id, http, room.Workroom) is { } pattern
            ? await PageAsync(http, room, pattern, PhotoForm.Blank, null, [], StatusCodes.Status200OK)
            : Results.NotFound();

    private static async Task<IResult> FileAsync(string id, string hash, HttpContext http, PhotoDesk photos)
    {
        if (!PatternId.TryParse(id, out var pattern) || await photos.FindAsync(http.User.Maker(), pattern, hash, http.RequestAborted) is not { } bytes)
        {
            return Results.NotFound();
        }

        http.Response.Headers.CacheControl = "private, max-age=86400, immutable";
        return Results.Bytes(bytes, MediaType);
    }

    private static async Task<IResult> AddSentAsync(string id, HttpContext http, PhotoRoom room)
    {
        if (await MyPatterns.OpenAsync(id, http, room.Workroom) is not { } pattern)
        {
            return Results.NotFound();
        }

        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        var typed = PhotoForm.Read(form);
        var problems = new List<FieldProblem>();
        if (form.Files.GetFile("File") is { Length: > 0 } file)
        {
            await using var content = file.OpenReadStream();
            typed = typed with { Hash = await KeepAsync(http.User.Maker(), pattern.Id, content, room, problems, http.RequestAborted) };
        }
        else if (typed.Hash.Length == 0 || await room.Photos.FindAsync(http.User.Maker(), pattern.Id, typed.Hash, http.RequestAborted) is null)
        {
            problems.Add(new FieldProblem("File", "No picture came with it.", "Choose a picture."));
            typed = typed with { Hash = "" };
        }

        if (typed.Photo(pattern.Document, out var wrong) is { } photo && problems.Count == 0)
        {
            problems.AddRange(await EditAsync(http, room, pattern.Id, photos => [.. photos, photo]));
        }

        problems.AddRange(wrong);
        return problems.Count == 0
            ? new SeeOther(Address(pattern.Id))
            : await PageAsync(http, room, pattern, typed, null, problems, StatusCodes.Status422UnprocessableEntity);
    }

    /// <summary>The hash of the photo that was made and kept; empty, and what is wrong, when there is none.</summary>
    private static async Task<string> KeepAsync(MakerId maker, PatternId id, Stream file, PhotoRoom room, List<FieldProblem> problems, CancellationToken cancellationToken)
    {
        var result = await room.Tools.MakeAsync(file, cancellationToken);
        if (result is PhotoResult.Refused refused)
        {
            problems.Add(new FieldProblem("File", refused.What, refused.Remedy));
            return "";
        }

        var made = ((PhotoResult.Made)result).Photo;
        switch (await room.Photos.KeepAsync(maker, id, Picture(made.Large), Picture(made.Small), cancellationToken))
        {
            case KeepResult.Kept kept:
                return kept.Photo.Hash;
            case KeepResult.Full full:
                problems.Add(new FieldProblem("File", FormattableString.Invariant($"{full.Most} photos of this pattern are kept already."), "Use one of those."));
                return "";
            default:
                problems.Add(new FieldProblem("File", "The pattern was deleted.", "Go back to my patterns."));
                return "";
        }
    }

    private static async Task<IResult> ChangeSentAsync(string id, HttpContext http, PhotoRoom room)
    {
        if (await MyPatterns.OpenAsync(id, http, room.Workroom) is not { } pattern)
        {
            return Results.NotFound();
        }

        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        var typed = PhotoForm.Read(form);
        if (pattern.Document.Photos.All(photo => photo.Hash != typed.Hash))
        {
            // taken out in another window
            return new SeeOther(Address(pattern.Id));
        }

        IReadOnlyList<FieldProblem> problems = [];
        switch (form["act"].ToString())
        {
            case "remove":
                problems = await EditAsync(http, room, pattern.Id, photos => photos.Where(photo => photo.Hash != typed.Hash).ToSequence());
                break;
            case "earlier":
                problems = await EditAsync(http, room, pattern.Id, photos => RowPlanSteps.Moved(photos, photos.Index().FirstOrDefault(photo => photo.Item.Hash == typed.Hash).Index, -1));
                break;
            default:
                if (typed.Photo(pattern.Document, out problems) is { } changed)
                {
                    problems = await EditAsync(http, room, pattern.Id, photos => photos.Select(photo => photo.Hash == changed.Hash ? changed : photo).ToSequence());
                }

                break;
        }

        return problems.Count == 0
            ? new SeeOther(Address(pattern.Id))
            : await PageAsync(http, room, pattern, typed, typed.Hash, problems, StatusCodes.Status422UnprocessableEntity);
    }

    // by the open pattern, so that windows of the editor hear of it, and undo takes it back
    private static async Task<IReadOnlyList<FieldProblem>> EditAsync(HttpContext http, PhotoRoom room, PatternId id, Func<Sequence<Photo>, Sequence<Photo>> change)
    {
        var maker = MakerPrincipal.Of(http.User)!.Value;
        using var seat = await room.Patterns.JoinAsync(maker.Id, maker.Stamp, id, static () => { });
        return seat is null
            ? [new FieldProblem("File", "The pattern was deleted.", "Go back to my patterns.")]
            : await seat.SubmitAsync(room.Names.Next(), 1, 0, new SetPhotos(change(seat.View.Document.Photos))) switch
            {
                Acknowledgement.Refused refused => [.. refused.Problems.Select(problem => new FieldProblem("File", problem.What, problem.Remedy))],
                { IsOpen: true } => [new FieldProblem("File", "This is not saved: the server cannot store it now.", "Try again in a moment.")],
                _ => [],
            };
    }

    private static async Task<IResult> PageAsync(HttpContext http, PhotoRoom room, OpenPattern pattern, PhotoForm typed, string? changed, IReadOnlyList<FieldProblem> problems, int status) => new HtmlPage<PhotosPage>(
        new Dictionary<string, object?>(StringComparer.Ordinal)
        {
            [nameof(PhotosPage.Maker)] = await http.MakerAsync(room.Makers),
            [nameof(PhotosPage.Pattern)] = pattern,
            [nameof(PhotosPage.Kept)] = await room.Photos.ListAsync(http.User.Maker(), pattern.Id, http.RequestAborted) ?? [],
            [nameof(PhotosPage.Typed)] = typed,
            [nameof(PhotosPage.Changed)] = changed,
            [nameof(PhotosPage.Problems)] = problems,
        },
        status);

    private static PictureFile Picture(PhotoFile file) => new(file.Bytes, file.Width, file.Height);
}

/// <summary>What putting photos to a pattern needs.</summary>
internal sealed record PhotoRoom(Workroom Workroom, Makers Makers, PhotoDesk Photos, OpenPatterns Patterns, WindowNames Names, PhotoTools Tools);
