using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class DocumentGenTests
{
    [Fact]
    public void Every_kind_of_document_is_at_least_one_in_twenty()
    {
        var documents = new List<PatternDocument>();
        DocumentGen.Documents.Sample(documents.Add, iter: 2_000, threads: 1);
        Assert.All(DocumentTraits.All, trait =>
            Assert.True(documents.Count(trait.Value) >= documents.Count / 20, $"{trait.Key}: {documents.Count(trait.Value)} of {documents.Count}"));
    }
}
