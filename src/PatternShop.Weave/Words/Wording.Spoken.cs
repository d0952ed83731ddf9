using System.Text;

namespace PatternShop.Weave;

public partial class Wording
{
    private static readonly Sequence<string> Small =
    [
        "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
        "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen",
    ];

    private static readonly Sequence<string> Tens = ["", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];

    /// <summary>A number as it is spoken: "twenty-one". From 0 to 999,999; others as digits.</summary>
    public virtual string SpokenNumber(int value) => value switch
    {
        < 0 or >= 1_000_000 => Number(value),
        < 20 => Small[value],
        < 100 => Tens[value / 10] + (value % 10 == 0 ? "" : "-" + Small[value % 10]),
        < 1000 => $"{Small[value / 100]} hundred{(value % 100 == 0 ? "" : " and " + SpokenNumber(value % 100))}",
        _ => $"{SpokenNumber(value / 1000)} thousand{(value % 1000 == 0 ? "" : (value % 1000 < 100 ? " and " : " ") + SpokenNumber(value % 1000))}",
    };

    /// <summary>How often, as it is spoken: "twice", "three times".</summary>
    public virtual string SpokenTimes(int count) => count switch { 1 => "once", 2 => "twice", _ => $"{SpokenNumber(count)} times" };

    /// <summary>A run as it is spoken: "under two".</summary>
    public virtual string SpokenRun(Run run) => $"{Name(run.Stroke)} {SpokenNumber(run.Count)}";

    /// <summary>How a bracket begins; the name in braces stands for how often it is woven.</summary>
    protected virtual string SpokenBracket => "then {times}: ";

    /// <summary>How a bracket begins inside another.</summary>
    protected virtual string SpokenInnerBracket => "within it {times}: ";

    /// <summary>What leads on after a bracket.</summary>
    protected virtual string SpokenAfter => "; after that ";

    /// <summary>What leads on in a bracket after one inside it.</summary>
    protected virtual string SpokenInnerAfter => "; still within it ";

    /// <summary>
    /// A writing for the ear, without signs: "under one, then three times: over one, under two; after that over one". A screen reader
    /// would leave brackets and "×" out.
    /// </summary>
    public string SpokenText(Writing writing)
    {
        ArgumentNullException.ThrowIfNull(writing);
        var text = new StringBuilder();
        Speak(text, writing.Items, inside: false);
        return text.ToString();
    }

    /// <summary>The directions of a reading for the ear, headed by their side.</summary>
    public string SpokenDirections(Reading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return $"{PlainHeading(reading.Key.From)}: {SpokenText(reading.Writing)}";
    }

    private void Speak(StringBuilder text, Sequence<WritingItem> items, bool inside)
    {
        for (var i = 0; i < items.Count; i++)
        {
            var after = i > 0 && items[i - 1] is BracketItem;
            if (items[i] is BracketItem bracket)
            {
                text.Append(after ? "; " : i > 0 ? ", " : "");
                text.Append((inside ? SpokenInnerBracket : SpokenBracket).Replace("{times}", SpokenTimes(bracket.Times), StringComparison.Ordinal));
                Speak(text, bracket.Items, inside: true);
            }
            else
            {
                text.Append(after ? (inside ? SpokenInnerAfter : SpokenAfter) : i > 0 ? ", " : "");
                text.Append(SpokenRun(((RunItem)items[i]).Run));
            }
        }
    }
}
