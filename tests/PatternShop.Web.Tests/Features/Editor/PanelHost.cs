using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;
using Microsoft.Extensions.DependencyInjection;
using MudBlazor.Services;
using PatternShop.Weave;

namespace PatternShop.Web.Tests;

/// <summary>A panel of the editor on a pattern in a real store.</summary>
internal sealed class PanelHost<TPanel> : IAsyncDisposable
    where TPanel : IComponent
{
    private readonly BunitContext _context = new();
    private readonly PatternSeat _seat;
    private IRenderedComponent<PanelPage<TPanel>>? _page;

    private PanelHost(PatternSeat seat)
    {
        _seat = seat;
        _context.JSInterop.Mode = JSRuntimeMode.Loose;
        _context.Services.AddMudServices();
        _context.Services.AddSingleton(Wording.English);
        _context.Services.AddSingleton<TimeProvider>(Clock);
        Editing = new Editing(seat.View, new FieldEdits(seat, "fields"), ShowAsync, areas => Pointed = areas);
    }

    public Editing Editing { get; }

    /// <summary>By which panels wait.</summary>
    public HandClock Clock { get; } = new();

    /// <summary>The cells that were pointed at last.</summary>
    public Sequence<Area> Pointed { get; private set; } = [];

    /// <summary>What the store has acknowledged.</summary>
    public PatternDocument Document => _seat.View.Document;

    public IRenderedComponent<PanelPage<TPanel>> Page => _page!;

    public static async Task<PanelHost<TPanel>> OpenAsync(TestBench bench, PatternDocument document)
    {
        var host = new PanelHost<TPanel>(await bench.SitAsync(await bench.PatternAsync(document)));
        host._page = host._context.Render<PanelPage<TPanel>>(page => page.Add(one => one.Editing, host.Editing));
        return host;
    }

    /// <summary>Types into the field with a label and leaves it.</summary>
    public Task TypeAsync(string label, string text) => Page.Find($"#{IdOf(label)}").ChangeAsync(new ChangeEventArgs { Value = text });

    /// <summary>Types into a second field before the change of the first is in the store.</summary>
    public async Task TypeBothAsync(TestBench bench, (string Label, string Text) first, (string Label, string Text) second)
    {
        using var gate = new ManualResetEventSlim();
        var asked = bench.Time.HoldAsync(gate);
        var before = TypeAsync(first.Label, first.Text);
        await asked;
        var after = TypeAsync(second.Label, second.Text);
        bench.Time.Go();
        gate.Set();
        await Task.WhenAll(before, after);
    }

    /// <summary>Chooses what reads so in the list with a label.</summary>
    public Task ChooseAsync(string label, string words)
    {
        var option = Page.FindAll($"#{IdOf(label)} option").First(option => option.TextContent.Trim() == words);
        return TypeAsync(label, option.GetAttribute("value")!);
    }

    public Task PressAsync(string name) => Page.FindAll("button")
        .First(button => (button.GetAttribute("aria-label") ?? button.TextContent.Trim()) == name)
        .ClickAsync();

    public string ValueOf(string label) => Page.Find($"#{IdOf(label)}").GetAttribute("value") ?? "";

    /// <summary>What is said beside a field; empty when nothing is.</summary>
    public string WrongAt(string label) => Page.FindAll($"#{IdOf(label)}-problem").Select(problem => problem.TextContent.Trim()).FirstOrDefault() ?? "";

    /// <summary>What is said below the fields.</summary>
    public IEnumerable<string> Notes => Page.FindAll(".notes p").Select(note => note.TextContent.Trim());

    public IEnumerable<string> Labels => Page.FindAll("label").Select(label => label.TextContent.Trim());

    public async ValueTask DisposeAsync()
    {
        _seat.Dispose();
        await _context.DisposeAsync();
    }

    private string IdOf(string label) => Page.FindAll("label").First(one => one.TextContent.Trim() == label).GetAttribute("for")!;

    private async Task ShowAsync()
    {
        Editing.View = _seat.View;
        await Page.InvokeAsync(Page.Instance.Show);
    }
}

/// <summary>The page around a panel, as the editor page is.</summary>
internal sealed class PanelPage<TPanel> : ComponentBase
    where TPanel : IComponent
{
    [Parameter]
    public Editing Editing { get; set; } = default!;

    public void Show() => StateHasChanged();

    protected override void BuildRenderTree(RenderTreeBuilder builder)
    {
        builder.OpenComponent<CascadingValue<Editing>>(0);
        builder.AddComponentParameter(1, nameof(CascadingValue<Editing>.Value), Editing);
        builder.AddComponentParameter(2, nameof(CascadingValue<Editing>.ChildContent), (RenderFragment)(inner =>
        {
            inner.OpenComponent<TPanel>(0);
            inner.CloseComponent();
        }));
        builder.CloseComponent();
    }
}
