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
    private bool _isMissing;
    private bool _isShowing;

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
            ? await Patterns.JoinAsync(maker.Id, maker.Stamp, id, () => _ = InvokeAsync(ShowAsync))
            : null;
        if (_seat is null)
        {
            _isMissing = true;
            return;
        }

        await _seat.View.PrepareAsync();
        var fields = new FieldEdits(_seat, Names.Next());
        _editing = new Editing(_seat.View, fields, ShowAsync, areas => _bridge?.Mark(areas));
        _bridge = new ChartBridge(Script, _seat, _editing, fields, new ChartFeed(Words), Log);
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
        _seat?.Dispose();
        if (_bridge is not null)
        {
            await _bridge.DisposeAsync();
        }
    }

    // The script is told at once; the words follow as fast as they can be worked out, always those of the newest state.
    private async Task ShowAsync()
    {
        _bridge!.Tell();
        if (_isShowing)
        {
            return;
        }

        _isShowing = true;
        while (_editing!.View.Revision != _seat!.View.Revision)
        {
            var view = _seat.View;
            await view.PrepareAsync();
            _editing.View = view;
            StateHasChanged();
        }

        _isShowing = false;
        if (_editing.IsSignedOut)
        {
            StateHasChanged();
        }
    }
}
