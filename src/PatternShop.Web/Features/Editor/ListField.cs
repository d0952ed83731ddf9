using Microsoft.AspNetCore.Components;

namespace PatternShop.Web;

/// <summary>A field that may belong to an item of a list. What was typed and refused is forgotten when another item may stand in its place.</summary>
public abstract class ListField : ComponentBase
{
    /// <summary>The name under which a list tells its fields the number of its <see cref="Arrangement{T}"/>.</summary>
    internal const string Arrangement = "Arrangement";

    private int _seen;

    [CascadingParameter(Name = Arrangement)]
    private int Now { get; set; }

    protected override void OnParametersSet()
    {
        if (_seen != Now)
        {
            _seen = Now;
            Forget();
        }
    }

    private protected abstract void Forget();
}
