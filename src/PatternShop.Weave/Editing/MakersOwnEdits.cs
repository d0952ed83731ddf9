namespace PatternShop.Weave;

/// <summary>Changes the maker's own words for one chart row.</summary>
/// <param name="Row">The chart row, from 1.</param>
/// <param name="Text">The words; blank takes them away.</param>
public sealed record SetRowWords(int Row, string Text) : Edit
{
    private protected override EditResult Change(PatternDocument document)
    {
        var others = document.RowWords.Where(words => words.Row != Row);
        return Done(document with
        {
            RowWords = string.IsNullOrWhiteSpace(Text)
                ? others.ToSequence()
                : others.Append(new RowWords(Row, Text)).OrderBy(words => words.Row).ToSequence(),
        });
    }
}

/// <summary>Changes the videos that the maker points to.</summary>
public sealed record SetVideos(Sequence<Video> Videos) : Edit
{
    private protected override EditResult Change(PatternDocument document) => Done(document with { Videos = Videos });
}

/// <summary>Changes which photos the maker shows and what is said of them.</summary>
public sealed record SetPhotos(Sequence<Photo> Photos) : Edit
{
    private protected override EditResult Change(PatternDocument document) => Done(document with { Photos = Photos });
}

/// <summary>Changes thicknesses and colours of the yarns.</summary>
public sealed record SetCloth(ClothLook Cloth) : Edit
{
    private protected override EditResult Change(PatternDocument document) => Done(document with { Cloth = Cloth });
}

/// <summary>Changes the longest float that the maker allows; null takes the limits away.</summary>
public sealed record SetLimits(Limits? Limits) : Edit
{
    private protected override EditResult Change(PatternDocument document) => Done(document with { Limits = Limits });
}

/// <summary>Prints a part of the sheets after the chart, or leaves it out.</summary>
public sealed record SetSheetPart(SheetPart Part, bool IsPrinted) : Edit
{
    private protected override EditResult Change(PatternDocument document) => Done(document with { AfterChart = document.AfterChart.With(Part, IsPrinted) });
}
