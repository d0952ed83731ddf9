using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>What stands at the foot of every sheet: title, version and page, the copy, a scale bar, and a QR code at the right.</summary>
internal sealed class Footer
{
    /// <summary>Empty at the left and at the right of the sheet.</summary>
    public const double Side = 11;

    private const double Below = 9.5;
    private const double Above = 1.5;
    private const double RuleGap = 0.8;
    private const double BarGap = 1.2;
    private const double QrModule = 0.5;
    private const double QrGap = 3;

    private readonly string _title;
    private readonly VersionLine _version;
    private readonly Paper _paper;
    private readonly TextStyle _style;
    private readonly Wording _wording;
    private readonly Drawing? _code;
    private readonly double _width;
    private readonly IReadOnlyList<Placed> _same;

    /// <param name="title">Of the pattern.</param>
    /// <param name="version">Which version.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="style">The lettering.</param>
    /// <param name="wording">The words.</param>
    public Footer(string title, VersionLine version, Paper paper, TextStyle style, Wording wording)
    {
        (_title, _version, _paper, _style, _wording) = (title, version, paper, style, wording);
        _code = version.Copy?.Address is { } address ? QrPicture.Of(address, QrModule) : null;
        _width = paper.Width - (2 * Side) - (_code is null ? 0 : _code.Width + QrGap);
        var bar = ScaleBar.HeightOf(style, _width, wording);
        var lines = 1 + (version.Copy is null ? 0 : 1) + (version.LicenceLine.Length > 0 ? 1 : 0);
        Height = Above + Math.Max(_code?.Height ?? 0, RuleGap + (lines * style.LineHeight) + BarGap + bar) + Below;
        _same = [.. Same(bar)];
    }

    /// <summary>From the end of what a page says to the edge of the paper.</summary>
    public double Height { get; }

    private double Top => _paper.Height - Height + Above;

    /// <summary>The marks, relative to the paper; all decoration.</summary>
    public IEnumerable<Placed> Marks(int page, int pages)
    {
        var number = _wording.PageText(page, pages);
        var taken = Lettering.Width(number, _style);
        return [.. _same, .. Line(number, _width - taken, 0), .. Line(NameThatFits(_width - taken - 5), 0, 0)];
    }

    // The same on every page.
    private IEnumerable<Placed> Same(double bar)
    {
        yield return new Placed(new StrokeMark(Side, Top, [[new Spot(0, 0), new Spot(_width, 0)]], false, 0.12, 0.55), null);
        var lines = new[]
        {
            _version.Copy is { } copy ? Fitting(_width, _wording.CopyText(copy.Code, copy.Address), _wording.CopyText(copy.Code, null)) : "",
            _version.LicenceLine,
        }.Where(line => line.Length > 0);
        foreach (var mark in lines.SelectMany((line, i) => Line(Lettering.Lines(line, _style, _width)[0].TrimEnd(), 0, i + 1)))
        {
            yield return mark;
        }

        foreach (var mark in ScaleBar.Of(_style, _width, _wording))
        {
            yield return mark.Moved(Side, _paper.Height - Below - bar);
        }

        foreach (var mark in _code is null ? [] : ShapeMarks.Of(_code))
        {
            yield return new Placed(mark, null).Moved(_paper.Width - Side - _code!.Width, _paper.Height - Below - _code.Height);
        }
    }

    // The version is never left out; the maker and the end of the title are where there is no room.
    private string NameThatFits(double room)
    {
        var version = _version.Text(_wording);
        var most = room - Lettering.Width($"… · {version}", _style);
        var title = most > 0 ? Lettering.Lines(_title, _style, most)[0].TrimEnd() : "";
        return Fitting(room, $"{_title} · {_version.FullText(_wording)}", $"{_title} · {version}", $"{title}… · {version}", version);
    }

    private string Fitting(double room, params ReadOnlySpan<string> ways)
    {
        foreach (var way in ways)
        {
            if (Lettering.Width(way, _style) <= room)
            {
                return way;
            }
        }

        return ways[^1];
    }

    private IEnumerable<Placed> Line(string text, double left, int number) =>
        TextLine.Set(text, Side + left, Top + RuleGap + (number * _style.LineHeight) + _style.Baseline, _style, null);
}
