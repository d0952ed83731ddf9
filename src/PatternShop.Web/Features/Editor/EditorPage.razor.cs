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
    private bool _isMissing;
    private bool _isGone;

    [Parameter]
    public string Id { get; set; } = "";

    [Inject]
    private OpenPatterns Patterns { get; set; } = default!;

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
        _seat = MakerPrincipal.Of(user) is { } maker && PatternId.TryParse(Id, out var id)
            ? await Patterns.JoinAsync(maker.Id, maker.Stamp, id, () => _ = InvokeAsync(HearAsync))
            : null;
        if (_seat is null)
        {
            _isMissing = true;
            return;
        }

        if (_isGone)
        {
            _seat.Dispose();
            return;
        }

        var view = _seat.View;
        await view.PrepareAsync();
        var fields = new FieldEdits(_seat, Names.Next());
        _editing = new Editing(view, fields, ShowAsync, areas => _bridge?.Mark(areas));
        _bridge = new ChartBridge(Script, _seat, _editing, fields, new ChartFeed(Words), Log);
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
        _seat?.Dispose();
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
            await ShowAsync();
        }
        catch (Exception failure)
        {
            await DispatchExceptionAsync(failure);
        }
    }

    // The script is told at once; the words follow as fast as they can be worked out, always those of the newest state.
    private async Task ShowAsync()
    {
        if (_isGone || (_seat, _editing, _bridge) is not ({ } seat, { } editing, { } bridge))
        {
            return;
        }

        bridge.Tell();
        await _shown.RunAsync(() => editing.View.Revision != seat.View.Revision, async () =>
        {
            var view = seat.View;
            await view.PrepareAsync();
            editing.View = view;
            StateHasChanged();
        });
        if (editing.IsSignedOut)
        {
            StateHasChanged();
        }
    }
}
