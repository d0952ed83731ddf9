using System.Globalization;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>Lists with one item changed, moved or taken out, and which field a problem of a row plan belongs to.</summary>
internal static class RowPlanSteps
{
    private static readonly string[] Fields = ["first", "last", "count", "weft", "name", "across", "from", "times"];

    public static Sequence<T> With<T>(Sequence<T> items, int at, T item) =>
        items.Index().Select(one => one.Index == at ? item : one.Item).ToSequence();

    /// <summary>The items with one changed; the same when there is no such item.</summary>
    public static Sequence<T> Changed<T>(Sequence<T> items, int at, Func<T, T> change) => at < items.Count ? With(items, at, change(items[at])) : items;

    /// <summary>Takes an item out of a list that is as long as whoever asked for it saw it: a button that is pressed twice takes out one.</summary>
    public static Func<Sequence<T>, Sequence<T>> Removal<T>(int count, int at) => items => items.Count == count ? Without(items, at) : items;

    public static Sequence<T> Without<T>(Sequence<T> items, int at) =>
        items.Index().Where(one => one.Index != at).Select(one => one.Item).ToSequence();

    /// <summary>The items with one a place earlier (-1) or later (1); the same when there is no such place.</summary>
    public static Sequence<T> Moved<T>(Sequence<T> items, int at, int by)
    {
        var to = at + by;
        return to < 0 || to >= items.Count ? items : With(With(items, at, items[to]), to, items[at]);
    }

    /// <summary>All steps in one list: a repeat without its parts, and they after it.</summary>
    public static Sequence<RowStep> Flat(RowPlan plan) =>
        plan.Steps.SelectMany(step => step is Repeat repeat ? [repeat with { Steps = [] }, .. repeat.Steps] : new[] { step }).ToSequence();

    public static bool HasPlainRows(RowPlan plan) => plan.Steps.Any(step => step is PlainRows || (step is Repeat repeat && repeat.Steps.Any(inner => inner is PlainRows)));

    /// <summary>Whether the panel has a field for what a problem points at, such as "/rows/steps/1/steps/0/first".</summary>
    public static bool ShowsField(RowPlan plan, string pointer) => pointer.Split('/') switch
    {
        ["", "rows", "steps", var step, var field] => IsIn(plan.Steps, step) && Fields.Contains(field),
        ["", "rows", "steps", var step, "steps", var inner, var field] =>
            IsIn(plan.Steps, step) && plan.Steps[Number(step)] is Repeat repeat && IsIn(repeat.Steps, inner) && Fields.Contains(field),
        _ => false,
    };

    private static bool IsIn<T>(Sequence<T> items, string index) => Number(index) is var at && at >= 0 && at < items.Count;

    private static int Number(string text) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : -1;
}
