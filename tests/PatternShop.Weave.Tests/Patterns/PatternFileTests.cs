using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class PatternFileTests
{
    [Fact]
    public void Reading_what_was_written_gives_the_same_document() =>
        DocumentGen.Documents.Sample(
            document =>
            {
                Assert.Equal(new ReadResult.Read(document, PatternWriter.Format), PatternReader.Read(PatternWriter.CanonicalBytes(document)));
                Assert.Equal(new ReadResult.Read(document, PatternWriter.Format), PatternReader.Read(PatternWriter.ReadableBytes(document)));
            },
            iter: Effort.Of(2_000, 50_000));

    [Fact]
    public void Generated_documents_keep_every_rule() =>
        DocumentGen.Documents.Sample(document => Assert.Equal([], DocumentRules.Check(document)), iter: 2_000);
}
