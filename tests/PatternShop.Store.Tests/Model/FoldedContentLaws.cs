using CsCheck;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Store.Tests;

/// <summary>What an edit makes and what was there before it, as the history keeps them.</summary>
public sealed class FoldedContentLaws
{
    [Fact]
    public void After_any_edit_both_documents_come_back_as_they_were() => DocumentGen.Documents.SelectMany(EditGen.Of, (document, edit) => (document, edit)).Sample(
        (document, edit) =>
        {
            var before = DocumentContent.Pack(PatternWriter.CanonicalBytes(document));
            var after = edit.Apply(document) is EditResult.Done done ? done.Document : document;
            var folded = FoldedContent.Pack(PatternWriter.CanonicalBytes(after), DocumentContent.Unpack(before));
            Assert.Equal((false, true), (FoldedContent.IsFolded(before), FoldedContent.IsFolded(folded)));
            Assert.Equal(after, DocumentContent.Read(FoldedContent.Unpack(folded, DocumentContent.Unpack(before))));
            Assert.Equal(document, DocumentContent.Read(DocumentContent.Unpack(before)));
        },
        iter: Effort.Of(3_000, 100_000));

    [Fact]
    public void Any_bytes_come_back_from_any_others() => Gen.Select(Gen.Byte[0, 3].Array[0, 40], Gen.Byte[0, 3].Array[0, 40]).Sample(
        (now, then) => Assert.Equal(now, FoldedContent.Unpack(FoldedContent.Pack(now, then), then)),
        iter: Effort.Of(3_000, 100_000));

    [Fact]
    public void A_stroke_on_a_large_chart_takes_few_bytes()
    {
        var random = new Random(3);
        var document = Charts.Document("x.") with { Motif = BitGrid.Create(300, 300, (_, _) => random.Next(2) == 1) };
        var after = document with { Motif = document.Motif.With(150, 150, !document.Motif[150, 150]) };
        var folded = FoldedContent.Pack(PatternWriter.CanonicalBytes(after), PatternWriter.CanonicalBytes(document));
        Assert.InRange(folded.Length, 1, 60);
        Assert.InRange(DocumentContent.Pack(PatternWriter.CanonicalBytes(after)).Length, 11_250, 20_000);
    }
}
