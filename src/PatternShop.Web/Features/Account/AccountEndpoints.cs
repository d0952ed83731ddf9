using System.Globalization;
using PatternShop.Store;

namespace PatternShop.Web;

/// <summary>Setting up, signing in, signing out.</summary>
internal static class AccountEndpoints
{
    public const string SignInPath = "/sign-in";
    private const string WrongPair = "That e-mail address and that passphrase do not belong together. Check both and try again.";

    public static void MapAccount(this IEndpointRouteBuilder routes)
    {
        // asked before the form is read: turning a crowd away must cost next to nothing
        var hashing = routes.MapGroup("").AddEndpointFilter(WhenNotBusy);
        routes.MapPage("/setup", SetUpAsync);
        hashing.MapForm("/setup", SetUpSentAsync);
        routes.MapPage(SignInPath, SignInAsync);
        hashing.MapForm(SignInPath, SignInSentAsync);
        routes.MapForm("/sign-out", SignOutAsync);
    }

    private static async ValueTask<object?> WhenNotBusy(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        var services = context.HttpContext.RequestServices;
        var lane = Lane(await services.GetRequiredService<KnownBrowsers>().FindAsync(context.HttpContext));
        if (!services.GetRequiredService<Makers>().IsBusy(lane))
        {
            return await next(context);
        }

        services.GetRequiredService<ShopEvents>().SignInBusy();
        return services.GetRequiredService<BusyPage>();
    }

    private static HashingLane Lane(KnownBrowser? browser) => browser is null ? HashingLane.Strangers : HashingLane.KnownBrowsers;

    /// <summary>Where to sign in, to go on to a path afterwards.</summary>
    public static string SignInThen(string path) => $"{SignInPath}?return={Uri.EscapeDataString(path)}";

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

    private static async Task<IResult> SetUpSentAsync(
        HttpContext http, Makers makers, AccountThrottles throttles, KnownBrowsers browsers, SampleShelf shelf, ShopEvents events, BusyPage busy)
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
            SetUpResult.Done done => await BeginAsync(http, (await makers.FindAsync(done.Maker, http.RequestAborted))!, browsers, events),
            SetUpResult.Busy => busy,
            SetUpResult.AlreadySetUp => AlreadySetUp(),
            SetUpResult.WrongCode => WrongCode(),
            SetUpResult.Refused refused => SetUpPage(form, refused.Problems, StatusCodes.Status422UnprocessableEntity),
            var other => throw new InvalidOperationException(other.GetType().Name),
        };
    }

    private static async Task<SeeOther> BeginAsync(HttpContext http, Maker maker, KnownBrowsers browsers, ShopEvents events)
    {
        SetUpCodeCookie.Delete(http);
        events.SetUp(maker.Id);
        await browsers.MarkAsync(http, maker.Id);
        await MakerSession.BeginAsync(http, maker);
        return new SeeOther(LocalAddress.Studio);
    }

    private static async Task<IResult> SignInAsync(string? known, HttpContext http, Makers makers, KnownBrowsers browsers)
    {
        if (known is not null && browsers.Invited(known) is { } invited)
        {
            http.Response.Headers.CacheControl = "no-store";
            await browsers.MarkAsync(http, invited);
            return new SeeOther(SignInPath);
        }

        var back = LocalAddress.OrStudio(http.Request.Query["return"]);
        if (MakerPrincipal.Of(http.User) is not null)
        {
            return new SeeOther(back);
        }

        return await makers.AnyAsync(http.RequestAborted)
            ? SignInPage("", back, "", StatusCodes.Status200OK)
            : NoticePage.Of(StatusCodes.Status404NotFound, "This shop has no maker yet", "Whoever started the server finds the address for setting it up in the server's output.");
    }

    private static async Task<IResult> SignInSentAsync(HttpContext http, Makers makers, AccountThrottles throttles, KnownBrowsers browsers, ShopEvents events, BusyPage busy)
    {
        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        var (email, back) = (form["email"].ToString(), LocalAddress.OrStudio(form["return"]));
        var browser = await browsers.FindAsync(http) is { } known && await makers.IdOfAsync(email, http.RequestAborted) == known.Maker ? known : null;
        if ((browser is null ? throttles.Wait(http, email) : throttles.Wait(browser)) is { } wait)
        {
            events.SignInThrottled(http);
            http.Response.Headers.RetryAfter = Seconds(wait);
            return SignInPage(email, back, $"There were too many tries. {Pause(wait)}", StatusCodes.Status429TooManyRequests);
        }

        return await makers.SignInAsync(email, form["passphrase"].ToString(), Lane(browser), http.RequestAborted) switch
        {
            SignInResult.Done done => await ContinueAsync(http, done.Maker, browsers, events, back),
            SignInResult.Wrong => WrongPairPage(http, events, email, back),
            SignInResult.Busy => busy,
            var other => throw new InvalidOperationException(other.GetType().Name),
        };
    }

    private static async Task<SeeOther> ContinueAsync(HttpContext http, Maker maker, KnownBrowsers browsers, ShopEvents events, string next)
    {
        await browsers.MarkAsync(http, maker.Id);
        await MakerSession.BeginAsync(http, maker);
        events.SignedIn(maker.Id);
        return new SeeOther(next);
    }

    private static HtmlPage<SignInPage> WrongPairPage(HttpContext http, ShopEvents events, string email, string back)
    {
        events.SignInFailed(http);
        return SignInPage(email, back, WrongPair, StatusCodes.Status422UnprocessableEntity);
    }

    // A workbench that is still open in another window must not go on: signing out ends every session of the maker. Here it ends
    // whatever becomes of the others, and they do even if the browser does not wait for the answer.
    private static async Task<IResult> SignOutAsync(HttpContext http, Makers makers, OpenSessions open, ShopEvents events)
    {
        await MakerSession.EndAsync(http);
        if (MakerPrincipal.Of(http.User) is not var (maker, stamp))
        {
            return new SeeOther("/");
        }

        try
        {
            await makers.EndSessionsAsync(maker, CancellationToken.None);
        }
        catch (StoreException)
        {
            return NoticePage.Of(
                StatusCodes.Status200OK,
                "You’re signed out in this browser only",
                "The server can’t save anything right now, so you’re still signed in wherever else you signed in. Once it can save again, sign in and sign out once more: that signs you out everywhere.");
        }

        open.End(maker, stamp);
        events.SignedOut(maker);
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
