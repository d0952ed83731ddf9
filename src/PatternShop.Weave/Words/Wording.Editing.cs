namespace PatternShop.Weave;

public partial class Wording
{
    /// <summary>What an edit does, as undo and redo name it: "draw 5 cells", "change the width".</summary>
    public string EditName(Edit edit)
    {
        ArgumentNullException.ThrowIfNull(edit);
        return edit switch
        {
            SetCells cells => $"{ActNamed(cells.Act)} {Count(cells.Cells.Count, "cell", "cells")}",
            SetWords words => $"change {WordsNamed(words)}",
            SetWidth => "change the width",
            SetFloating => "change the floating selvedges",
            SetRowPlan => "change the row plan",
            OrderRows order => OrderName(order),
            SetEdges edges => EdgesName(edges),
            Mend mend => MendName(mend),
            SetGauge => "change sett or row density",
            SetGlyphs => "change how cells are drawn",
            SetRowWords words => $"change the words of chart row {Number(words.Row)}",
            SetVideos => "change the videos",
            SetPhotos => "change the photos",
            SetLimits => "change the longest float",
            SetSheetPart part => $"{(part.IsPrinted ? "print" : "leave out")} “{SheetPartName(part.Part)}”",
            SetCloth => "change thicknesses or colours",
            ResizeMotif size => $"make the motif {Rows(size.Rows)} of {Count(size.Ends, "end", "ends")}{SidesNamed(size)}",
            ReplaceMotif replace => $"begin from a weave of {Rows(replace.Motif.Rows)} and {Count(replace.Motif.Columns, "end", "ends")}",
            InsertRows insert => $"put in {ThreadsNamed("row", insert.At, insert.Count)}",
            RemoveRows remove => $"take out {ThreadsNamed("row", remove.First, remove.Count)}",
            InsertEnds insert => $"put in {ThreadsNamed("end", insert.At, insert.Count)}",
            RemoveEnds remove => $"take out {ThreadsNamed("end", remove.First, remove.Count)}",
            TransformCells transform => $"{TransformNamed(transform.Kind)}{BoxNamed(transform.Box)}",
            ShiftCells shift => $"shift{BoxNamed(shift.Box)}",
            MoveCells move => $"move{BoxNamed(move.Box)}",
            _ => throw new InvalidOperationException($"No name for {edit.GetType().Name}."),
        };
    }

    /// <summary>Which wefts a row plan lists and never uses: "No step uses weft 2, so readers will not see it."; empty where every one is used.</summary>
    public string UnusedWeftsText(RowPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var unused = Enumerable.Range(1, plan.Wefts.Count).Except(plan.UsedWefts()).ToList();
        return unused.Count == 0 ? "" : $"No step uses {Listed("weft", "wefts", unused)}, so readers will not see {(unused.Count == 1 ? "it" : "them")}.";
    }

    /// <summary>A consequence of an edit in a sentence.</summary>
    public string ConsequenceText(Consequence consequence)
    {
        ArgumentNullException.ThrowIfNull(consequence);
        return consequence switch
        {
            RowWordsCut cut => $"Chart row {Number(cut.Words.Row)} is gone, and your words for it: “{cut.Words.Text}”",
            VideoMoved moved => $"Chart row {Number(moved.Video.Row ?? 0)} is gone; its video “{moved.Video.Caption}” stands with the whole pattern now.",
            PhotoMoved moved => $"Chart row {Number(moved.Photo.Row ?? 0)} is gone; its photo “{moved.Photo.Caption}” stands with the whole pattern now.",
            CellsCut cut => $"{Count(cut.Over, "over cell was", "over cells were")} cut off.",
            OffsetMoved moved => $"The pattern now begins at end {Number(moved.To + 1)} of the motif instead of end {Number(moved.From + 1)}.",
            StepCut { After: null } gone => $"Step {Number(gone.Step)} of the row plan no longer weaves {RowsNamed(gone.Before)}.",
            StepCut cut => $"Step {Number(cut.Step)} of the row plan weaves {RowsNamed(cut.After!)} instead of {RowsNamed(cut.Before)}.",
            StepGrown grown => $"Step {Number(grown.Step)} of the row plan weaves {RowsNamed(grown.After)}, the new ones too, instead of {RowsNamed(grown.Before)}.",
            StepRenumbered same => $"Step {Number(same.Step)} of the row plan weaves the same rows as before, which are {RowsNamed(same.After)} now.",
            RowsNotWoven none => $"No step of the row plan weaves the new {Range("row", "rows", none.First, none.Last)}.",
            PlanBegunAnew anew => $"The row plan had no row left, so it now weaves {RowsNamed(new ChartRows(1, anew.Rows, 1))} once.",
            _ => throw new InvalidOperationException($"No words for {consequence.GetType().Name}."),
        };
    }

    private string ThreadsNamed(string thread, int first, int count) => Range(thread, thread + "s", first, first + count - 1);

    private string BoxNamed(CellRectangle? box) => box is { } part ? $" {Rows(part.Rows)} of {Count(part.Columns, "end", "ends")}" : " the motif";

    private static string TransformNamed(CellTransform kind) => kind switch
    {
        CellTransform.MirrorAcross => "mirror left and right of",
        CellTransform.MirrorAlong => "mirror top and bottom of",
        CellTransform.HalfTurn => "half turn of",
        CellTransform.TurnFigure => "quarter turn of the figure of",
        CellTransform.TurnCloth => "quarter turn of the cloth of",
        CellTransform.Swap => "swap over and under of",
        _ => "other side of",
    };

    private static string SidesNamed(ResizeMotif size) => (size.EndsAt, size.RowsAt) switch
    {
        (Side.Right, RowEdge.Top) => "",
        (Side.Right, _) => ", at the bottom",
        (_, RowEdge.Top) => ", at the left",
        _ => ", at the left and the bottom",
    };

    private static string ActNamed(CellsAct act) => act switch
    {
        CellsAct.Draw => "draw",
        CellsAct.Cover => "cover",
        _ => "put down a copy:",
    };

    private static string WordsNamed(SetWords words)
    {
        string[] named =
        [
            .. words.Title is null ? (string[])[] : ["the title"],
            .. words.Notes is null ? (string[])[] : ["the notes"],
            .. words.Licence is null ? (string[])[] : ["the licence"],
            .. words.Language is null ? (string[])[] : ["the language"],
        ];
        return named.Length == 1 ? named[0] : "the words";
    }

    private string RowsNamed(ChartRows rows) => Range("chart row", "chart rows", rows.First, rows.Last);
}
