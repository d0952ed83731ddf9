using System.Collections.Concurrent;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class DocumentGenTests
{
    [Fact]
    public void Every_kind_of_document_is_at_least_one_in_twenty()
    {
        var documents = new ConcurrentBag<PatternDocument>();
        DocumentGen.Documents.SampleFixed(documents.Add, 2_000);
        Assert.All(DocumentTraits.All, trait =>
            Assert.True(documents.Count(trait.Value) >= documents.Count / 20, $"{trait.Key}: {documents.Count(trait.Value)} of {documents.Count}"));
    }
}
