using System.Globalization;
using PatternShop.Store;

namespace PatternShop.Web;

/// <summary>Setting up, signing in, signing out.</summary>
internal static class AccountEndpoints
{
    private const string WrongPair = "That e-mail address and that passphrase do not belong together. Check both and try again.";

    public static void AddAccount(this IServiceCollection services)
    {
        services.AddSingleton<AccountThrottles>();
        services.AddSingleton<SetUpInvitation>();
    }

    public static void MapAccount(this IEndpointRouteBuilder routes)
    {
        routes.MapPage("/setup", SetUpAsync);
        routes.MapForm("/setup", SetUpSentAsync);
        routes.MapPage("/sign-in", SignInAsync);
        routes.MapForm("/sign-in", SignInSentAsync);
        routes.MapForm("/sign-out", SignOutAsync);
    }

    // The address that the server printed is sent on at once, so that the code stays neither in the address bar nor in the history.
    private static async Task<IResult> SetUpAsync(string? code, HttpContext http, Makers makers, AccountThrottles throttles)
    {
        if (await makers.AnyAsync(http.RequestAborted))
        {
            return AlreadySetUp();
        }

        if (throttles.Wait(http) is { } wait)
        {
            return TooMany(http, wait);
        }

        if (code is null)
        {
            var carried = SetUpCodeCookie.Read(http);
            return await makers.IsSetUpCodeAsync(carried, http.RequestAborted) ? SetUpPage(SetUpForm.Begin(carried), [], StatusCodes.Status200OK) : WrongCode();
        }

        if (!await makers.IsSetUpCodeAsync(code, http.RequestAborted))
        {
            return WrongCode();
        }

        SetUpCodeCookie.Write(http, code);
        return new SeeOther(SetUpCodeCookie.Path);
    }

    private static async Task<IResult> SetUpSentAsync(HttpContext http, Makers makers, AccountThrottles throttles, SampleShelf shelf, ShopEvents events)
    {
        if (throttles.Wait(http) is { } wait)
        {
            return TooMany(http, wait);
        }

        var sent = await http.Request.ReadFormAsync(http.RequestAborted);
        var form = SetUpForm.Read(sent);
        var maker = form.Maker(sent[nameof(NewMaker.Passphrase)].ToString());
        if (maker.Passphrase != sent[SetUpForm.PassphraseAgain].ToString())
        {
            var differs = new FieldProblem(SetUpForm.PassphraseAgain, "The two passphrases differ.", "Type the same one twice.");
            return SetUpPage(form, [.. MakerRules.Check(maker), differs], StatusCodes.Status422UnprocessableEntity);
        }

        var samples = form.Samples.Select(shelf.Find).OfType<Sample>().Select(sample => sample.Document).ToList();
        return await makers.SetUpAsync(form.Code, maker, samples, http.RequestAborted) switch
        {
            SetUpResult.Done done => await BeginAsync(http, makers, done.Maker, events),
            SetUpResult.AlreadySetUp => AlreadySetUp(),
            SetUpResult.WrongCode => WrongCode(),
            SetUpResult.Refused refused => SetUpPage(form, refused.Problems, StatusCodes.Status422UnprocessableEntity),
            var other => throw new InvalidOperationException(other.GetType().Name),
        };
    }

    private static async Task<IResult> BeginAsync(HttpContext http, Makers makers, MakerId id, ShopEvents events)
    {
        SetUpCodeCookie.Delete(http);
        events.SetUp(id);
        await MakerSession.BeginAsync(http, (await makers.FindAsync(id, http.RequestAborted))!);
        return new SeeOther(LocalAddress.Studio);
    }

    private static async Task<IResult> SignInAsync(HttpContext http, Makers makers)
    {
        var back = LocalAddress.OrStudio(http.Request.Query["return"]);
        if (MakerPrincipal.Of(http.User) is not null)
        {
            return new SeeOther(back);
        }

        return await makers.AnyAsync(http.RequestAborted)
            ? SignInPage("", back, "", StatusCodes.Status200OK)
            : NoticePage.Of(StatusCodes.Status404NotFound, "This shop has no maker yet", "Whoever started the server finds the address for setting it up in the server's output.");
    }

    private static async Task<IResult> SignInSentAsync(HttpContext http, Makers makers, AccountThrottles throttles, ShopEvents events)
    {
        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        var (email, back) = (form["email"].ToString(), LocalAddress.OrStudio(form["return"]));
        if (throttles.Wait(http, email) is { } wait)
        {
            events.SignInThrottled(http);
            http.Response.Headers.RetryAfter = Seconds(wait);
            return SignInPage(email, back, $"There were too many tries. {Pause(wait)}", StatusCodes.Status429TooManyRequests);
        }

        if (await makers.SignInAsync(email, form["passphrase"].ToString(), http.RequestAborted) is not { } maker)
        {
            events.SignInFailed(http);
            return SignInPage(email, back, WrongPair, StatusCodes.Status422UnprocessableEntity);
        }

        await MakerSession.BeginAsync(http, maker);
        events.SignedIn(maker.Id);
        return new SeeOther(back);
    }

    // A workbench that is still open in another window must not go on saving: signing out ends every session of the maker.
    private static async Task<IResult> SignOutAsync(HttpContext http, Makers makers, ShopEvents events)
    {
        if (MakerPrincipal.Of(http.User) is { } session)
        {
            await makers.EndSessionsAsync(session.Id, http.RequestAborted);
            events.SignedOut(session.Id);
        }

        await MakerSession.EndAsync(http);
        return new SeeOther("/");
    }

    private static HtmlPage<SetUpPage> SetUpPage(SetUpForm form, IReadOnlyList<FieldProblem> problems, int status) => new(
        new Dictionary<string, object?>(StringComparer.Ordinal)
        {
            [nameof(Web.SetUpPage.Form)] = form,
            [nameof(Web.SetUpPage.Problems)] = problems,
        },
        status);

    private static HtmlPage<SignInPage> SignInPage(string email, string back, string message, int status) => new(
        new Dictionary<string, object?>(StringComparer.Ordinal)
        {
            [nameof(Web.SignInPage.Email)] = email,
            [nameof(Web.SignInPage.Return)] = back,
            [nameof(Web.SignInPage.Message)] = message,
        },
        status);

    private static HtmlPage<NoticePage> AlreadySetUp() =>
        NoticePage.Of(StatusCodes.Status410Gone, "This shop is set up already", "The address for setting it up worked once and is of no use any more.", "Sign in", "/sign-in");

    private static HtmlPage<NoticePage> WrongCode() =>
        NoticePage.Of(StatusCodes.Status403Forbidden, "This is not the code for setting up", "The server prints the whole address when it starts, and a new one at every start. Copy the newest.");

    private static HtmlPage<NoticePage> TooMany(HttpContext http, TimeSpan wait)
    {
        http.Response.Headers.RetryAfter = Seconds(wait);
        return NoticePage.Of(StatusCodes.Status429TooManyRequests, "Too many tries at once", Pause(wait));
    }

    private static string Seconds(TimeSpan wait) => Math.Ceiling(wait.TotalSeconds).ToString(CultureInfo.InvariantCulture);

    private static string Pause(TimeSpan wait) => Math.Ceiling(wait.TotalMinutes) is var minutes and > 1
        ? string.Create(CultureInfo.InvariantCulture, $"Wait {minutes} minutes, then try again.")
        : "Wait a minute, then try again.";
}
