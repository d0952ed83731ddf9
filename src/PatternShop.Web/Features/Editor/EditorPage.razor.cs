using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.JSInterop;
using PatternShop.Store;
using PatternShop.Weave;

namespace PatternShop.Web;

public sealed partial class EditorPage : IAsyncDisposable
{
    private ElementReference _root;
    private PatternSeat? _seat;
    private Editing? _editing;
    private ChartBridge? _bridge;
    private readonly CatchUp _shown = new();
    private IDisposable? _session;
    private bool _isMissing;
    private bool _hasEnded;
    private bool _isGone;

    [Parameter]
    public string Id { get; set; } = "";

    [Inject]
    private OpenPatterns Patterns { get; set; } = default!;

    [Inject]
    private OpenSessions Sessions { get; set; } = default!;

    [Inject]
    private AuthenticationStateProvider Authentication { get; set; } = default!;

    [Inject]
    private IJSRuntime Script { get; set; } = default!;

    [Inject]
    private Wording Words { get; set; } = default!;

    [Inject]
    private WindowNames Names { get; set; } = default!;

    [Inject]
    private ILogger<EditorPage> Log { get; set; } = default!;

    protected override async Task OnInitializedAsync()
    {
        var user = (await Authentication.GetAuthenticationStateAsync()).User;
        if (MakerPrincipal.Of(user) is var (maker, stamp) && PatternId.TryParse(Id, out var id))
        {
            _session = Sessions.Add(maker, stamp, () => _ = InvokeAsync(End));
            _seat = await Patterns.JoinAsync(maker, stamp, id, () => _ = InvokeAsync(HearAsync));
        }

        if (_isGone || _hasEnded)
        {
            Leave();
            return;
        }

        if (_seat is null)
        {
            _isMissing = true;
            return;
        }

        var (seat, view) = (_seat, _seat.View);
        await view.PrepareAsync();
        if (_hasEnded)
        {
            return;
        }

        var fields = new FieldEdits(seat, Names.Next());
        _editing = new Editing(view, fields, ShowAsync, areas => _bridge?.Mark(areas));
        _bridge = new ChartBridge(Script, seat, _editing, fields, new ChartFeed(Words), Log);
        // what another window did meanwhile could not be shown yet
        await ShowAsync();
    }

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (_bridge is { IsOpen: false } bridge)
        {
            await bridge.OpenAsync(_root);
        }
    }

    public async ValueTask DisposeAsync()
    {
        _isGone = true;
        Leave();
        if (_bridge is not null)
        {
            await _bridge.DisposeAsync();
        }
    }

    // nobody waits for what another window does: a failure would go unseen, and the page stay as it was
    private async Task HearAsync()
    {
        try
        {
            if (_seat is { } seat && await Sessions.IsCurrentAsync(seat.Maker, seat.Stamp))
            {
                await ShowAsync();
            }
        }
        catch (Exception failure)
        {
            await DispatchExceptionAsync(failure);
        }
    }

    // The script is told at once; the words follow as fast as they can be worked out, always those of the newest state.
    private async Task ShowAsync()
    {
        if (_isGone || _hasEnded || (_seat, _editing, _bridge) is not ({ } seat, { } editing, { } bridge))
        {
            return;
        }

        bridge.Tell();
        await _shown.RunAsync(() => !_hasEnded && editing.View.Revision != seat.View.Revision, async () =>
        {
            var view = seat.View;
            await view.PrepareAsync();
            if (!_hasEnded)
            {
                editing.View = view;
                StateHasChanged();
            }
        });
    }

    // The page stays as it was last shown, and says that the maker is signed out.
    private void End()
    {
        _hasEnded = true;
        Leave();
        _editing?.IsSignedOut = true;
        _bridge?.End();
        StateHasChanged();
    }

    private void Leave()
    {
        _session?.Dispose();
        _seat?.Dispose();
        (_session, _seat) = (null, null);
    }
}
