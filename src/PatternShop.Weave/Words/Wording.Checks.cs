namespace PatternShop.Weave;

/// <summary>Words about findings: what was found, why it matters, what mends it.</summary>
public partial class Wording
{
    private const int StretchesNamed = 6;

    public string ChecksTitle => "Checks";

    public string WeightName(Weight weight) => weight switch
    {
        Weight.Fault => "Fault",
        Weight.Caution => "Caution",
        _ => "Note",
    };

    /// <summary>How many findings there are of each weight: "1 fault, 2 cautions, 1 note.".</summary>
    public string ChecksSummary(IReadOnlyCollection<Finding> findings)
    {
        ArgumentNullException.ThrowIfNull(findings);
        int Of(Weight weight) => findings.Count(finding => finding.Weight == weight);
        var (faults, cautions, notes) = (Of(Weight.Fault), Of(Weight.Caution), Of(Weight.Note));
        return Capital(string.Join(", ", new[]
        {
            faults > 0 ? Count(faults, "fault", "faults") : cautions > 0 ? "" : "no faults, no cautions",
            cautions > 0 ? Count(cautions, "caution", "cautions") : "",
            notes > 0 ? Count(notes, "note", "notes") : "",
        }.Where(part => part.Length > 0))) + ".";
    }

    /// <summary>What is looked at, for a piece in which nothing was found and for those who wonder.</summary>
    public string ChecksDone(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var looked = Enum.GetValues<CheckKind>().Where(check => check != CheckKind.Blank).Select(CheckName).ToList();
        return $"Looked for {string.Join(", ", looked.SkipLast(1))} and {looked[^1]}, in all {Rows(piece.Rows.Count)} of {Count(piece.Ends, "end", "ends")}.";
    }

    /// <summary>What a check looks for: "turns that are not wrapped".</summary>
    public string CheckName(CheckKind check) => check switch
    {
        CheckKind.Blank => "a motif without a drawing",
        CheckKind.LooseThreads => "threads that never interlace",
        CheckKind.FallsApart => "layers that come apart",
        CheckKind.IdleFloating => "floating selvedges that are not woven in",
        CheckKind.Turns => "turns that are not wrapped",
        CheckKind.Seam => "repeated rows that do not join",
        CheckKind.Floats => "long floats",
        CheckKind.Repeats => "repeated rows that read otherwise every other time",
        CheckKind.Mirror => "balance ends that do not make the sides alike",
        _ => throw new InvalidOperationException($"No words for {check}."),
    };

    /// <summary>What was found, in a sentence that names the threads.</summary>
    public string FindingWhat(Piece piece, Finding finding)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return finding switch
        {
            NothingDrawn => "Nothing is drawn yet.",
            LooseThreads loose => $"{Capital(ThreadsNamed(loose))} never {(loose.Count == 1 ? "interlaces" : "interlace")}.",
            LayersApart apart => $"The cloth comes apart: {RowsAndEnds(apart.Layer)} lift off.",
            FloatingIdle idle => $"The {Name(idle.Side)} floating selvedge is not woven in.",
            TurnsNotWrapped turns => $"{OfWeft(piece, turns.Weft)}At the {Name(turns.Side)} edge, {Some("the turn after row", "the turns after rows", turns.Rows, turns.Count)} {(turns.Count == 1 ? "is" : "are")} not wrapped.",
            SeamBreaks seam => seam.Band.RowsEachTime == 1
                ? $"{Capital(TimeText(seam.Band, 1))} does not join itself when it is repeated."
                : $"{Capital(TimeText(seam.Band, 1))} do not join when they are repeated.",
            FloatsTooLong floats => $"{Capital(FloatsNamed(floats.Kind, floats.Count))} too long: {LongestNamed(floats.Kind, floats.Longest, floats.Length)}.",
            LongestFloat longest => $"Longest floats: {FloatNamed(longest.Weft, longest.WeftThreads, longest.WeftLength)}; {FloatNamed(longest.Warp, longest.WarpThreads, longest.WarpLength)}.",
            TimesUnlike unlike => $"{Capital(TimeText(unlike.Band, 1))} {(unlike.Band.RowsEachTime == 1 ? "reads" : "read")} otherwise every other time.",
            NotMirrored => "Left and right do not mirror each other.",
            _ => throw new InvalidOperationException($"No words for {finding?.GetType().Name}."),
        };
    }

    /// <summary>Why it matters, and what it was judged on.</summary>
    public string FindingWhy(Piece piece, Finding finding)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return finding switch
        {
            NothingDrawn nothing => $"Every row goes {Name(nothing.Stroke)} every end, so there is no cloth.",
            LooseThreads loose => LooseWhy(loose),
            LayersApart apart => "They lie over all other threads that they cross. " + JudgedOn(apart),
            FloatingIdle idle => $"Every row goes {Name(idle.Stroke)} it, so nothing goes round it.",
            TurnsNotWrapped turns => TurnsWhy(turns),
            SeamBreaks seam => $"Across the seam between two times through an end floats past {Rows(seam.Across)}; elsewhere past {Number(seam.Elsewhere)} at most.{(seam.RowsAlike ? " The last row and the next do the same at every end." : "")}",
            FloatsTooLong floats => $"You allow {LimitsText(piece.Document.Limits)}: {Count(floats.Most, ThreadName(floats.Kind, 1), ThreadName(floats.Kind, 2))} here. First {PlaceText(piece, floats.Areas[0])}.",
            LongestFloat longest => $"You have set no limit, so none is called too long. {(longest.Areas.Count == 1 ? "It is" : "They are first")} {string.Join(" and ", longest.Areas.Select(area => PlaceText(piece, area)))}.",
            TimesUnlike unlike => TwoReadingsText(piece, unlike.Band),
            NotMirrored mirrored => $"{Capital(BalanceNamed(mirrored.Balance))} after a pattern that begins at end {Number(mirrored.Offset + 1)} of the motif {(mirrored.Balance == 1 ? "does" : "do")} not make the sides alike.",
            _ => throw new InvalidOperationException($"No words for {finding?.GetType().Name}."),
        };
    }

    /// <summary>What the limits of a document allow at its densities: "3 ends in a row, 2 rows at an end". A float of one thread is none.</summary>
    public string MostText(PatternDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        string Most(FloatKind kind) => Count(kind.Most(document.Limits, document.Gauge), ThreadName(kind, 1), ThreadName(kind, 2));
        return $"{Most(FloatKind.WeftOver)} in a row, {Most(FloatKind.WarpOver)} at an end";
    }

    /// <summary>Where cells are: "in row 3 at ends 4–8", "in rows 4–7 at end 2".</summary>
    public string PlaceText(Piece piece, Area area)
    {
        ArgumentNullException.ThrowIfNull(piece);
        string End(int end) => area.Of == AreaOf.Motif ? Number(end + 1) : piece.EndName(end);
        var ends = area.FirstEnd == area.LastEnd ? $"end {End(area.FirstEnd)}" : $"ends {End(area.FirstEnd)}–{End(area.LastEnd)}";
        var all = area.FirstEnd == 0 && area.LastEnd == (area.Of == AreaOf.Motif ? piece.Document.Motif.Columns : piece.Ends) - 1;
        return $"in {Range("row", "rows", area.FirstRow, area.LastRow)} {(all ? "across all ends" : $"at {ends}")}";
    }

    private string LooseWhy(LooseThreads loose)
    {
        var them = loose.Count == 1 ? "it" : "them";
        return (loose.Kind, loose.Within) switch
        {
            (ThreadKind.Row, _) => $"{(loose.Count == 1 ? "It passes" : "Each passes")} every end on the same side, so {(loose.Count == 1 ? "it lies" : "they lie")} loose on the cloth.",
            (_, AreaOf.Piece) => $"Every row of the order of rows passes {them} on the same side.",
            _ when loose.HeldByPlain => $"Every row of the motif passes {them} on the same side; only the plain rows hold {them}.",
            _ => $"Every row passes {them} on the same side, so {(loose.Count == 1 ? "it lies" : "they lie")} loose on the cloth.",
        };
    }

    private static string TurnsWhy(TurnsNotWrapped turns)
    {
        var holds = turns.NoneHolds
            ? "No turn at all goes round the outermost end there, so it can slip out."
            : "The weft passes the outermost end on the same side before and after, so it does not go round it.";
        return turns.PullsOut switch
        {
            0 => holds,
            1 => holds + " At one of them the weft goes back the way it came, and pulls straight out.",
            _ => holds + " Where the weft goes back the way it came, it pulls straight out.",
        };
    }

    private static string JudgedOn(LayersApart apart) =>
        "Judged on the motif repeated without end, without floating selvedges and turns, which would only sew the layers together at the edge."
        + (apart.Weight == Weight.Caution ? " Plain rows are left out too; they may hold it." : "");

    private string ThreadsNamed(LooseThreads loose)
    {
        var threads = loose.Kind == ThreadKind.Row
            ? Some("row", "rows", loose.Numbers, loose.Count)
            : Some("end", "ends", loose.Numbers, loose.Count);
        return threads + (loose.Within == AreaOf.Motif ? " of the motif" : " of the piece");
    }

    private string RowsAndEnds(Layer layer) =>
        $"{Some("row", "rows", layer.Rows.Select(row => row + 1).ToList(), layer.Rows.Count)} with {Some("end", "ends", layer.Ends.Select(end => end + 1).ToList(), layer.Ends.Count)}";

    private string OfWeft(Piece piece, int weft) => WeftName(piece, weft) is { Length: > 0 } name ? Capital(name) + ": " : "";

    private static string SideNamed(FloatKind kind) => kind is FloatKind.WeftOver or FloatKind.WarpOver ? "on the face" : "on the back";

    private static string ThreadName(FloatKind kind, int count) => (kind.IsWeft(), count) switch
    {
        (true, 1) => "end",
        (true, _) => "ends",
        (false, 1) => "row",
        (false, _) => "rows",
    };

    private string FloatsNamed(FloatKind kind, int count) =>
        $"{Count(count, "float", "floats")} of {(kind.IsWeft() ? "the weft" : "ends")} {SideNamed(kind)} {(count == 1 ? "is" : "are")}";

    private string LongestNamed(FloatKind kind, int threads, Length length) =>
        $"the longest passes {Count(threads, ThreadName(kind, 1), ThreadName(kind, 2))}, {LengthBoth(length)}";

    private string FloatNamed(FloatKind kind, int threads, Length length)
    {
        var thread = kind.IsWeft() ? "the weft" : "an end";
        return threads < 2 ? $"{thread} does not float" : $"{thread} past {Count(threads, ThreadName(kind, 1), ThreadName(kind, 2))} {SideNamed(kind)}, {LengthBoth(length)}";
    }

    private string BalanceNamed(int balance) => Count(balance, "balance end", "balance ends");

    // "row 3", "rows 1–3 and 5", "rows 1, 3, 5, 7, 9, 11 and 4 more"; the numbers may be the first only of all that there are
    private string Some(string one, string many, IReadOnlyList<int> numbers, int count)
    {
        var stretches = new List<(int First, int Last)>();
        foreach (var number in numbers)
        {
            if (stretches.Count > 0 && stretches[^1].Last + 1 == number)
            {
                stretches[^1] = (stretches[^1].First, number);
            }
            else
            {
                stretches.Add((number, number));
            }
        }

        var named = stretches.Take(StretchesNamed).ToList();
        var more = count - named.Sum(stretch => stretch.Last - stretch.First + 1);
        var texts = named.SelectMany(StretchNamed).ToList();
        if (more > 0)
        {
            texts.Add($"{Number(more)} more");
        }

        return $"{(count == 1 ? one : many)} {(texts.Count == 1 ? texts[0] : $"{string.Join(", ", texts.SkipLast(1))} and {texts[^1]}")}";
    }

    private IEnumerable<string> StretchNamed((int First, int Last) stretch) => (stretch.Last - stretch.First) switch
    {
        0 => [Number(stretch.First)],
        1 => [Number(stretch.First), Number(stretch.Last)],
        _ => [$"{Number(stretch.First)}–{Number(stretch.Last)}"],
    };
}
