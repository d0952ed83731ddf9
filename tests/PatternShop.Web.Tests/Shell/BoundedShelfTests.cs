using Xunit;

namespace PatternShop.Web.Tests;

public sealed class BoundedShelfTests
{
    private readonly BoundedShelf<string> _shelf = new(10, text => text.Length);

    [Fact]
    public void What_was_not_asked_for_longest_is_taken_down()
    {
        _shelf.Put("a", "aaaa");
        _shelf.Put("b", "bbbb");
        Assert.True(_shelf.TryGet("a", out _));
        _shelf.Put("c", "cccc");
        Assert.False(_shelf.TryGet("b", out _));
        Assert.True(_shelf.TryGet("a", out var kept));
        Assert.Equal("aaaa", kept);
        Assert.True(_shelf.TryGet("c", out _));
    }

    [Fact]
    public void Putting_a_thing_again_does_not_weigh_twice()
    {
        for (var time = 0; time < 5; time++)
        {
            _shelf.Put("a", "aaaa");
        }

        _shelf.Put("b", "bbbb");
        Assert.True(_shelf.TryGet("a", out _));
    }

    [Fact]
    public void What_is_too_heavy_by_itself_is_not_kept()
    {
        _shelf.Put("a", "aaaa");
        _shelf.Put("b", "bbbbbbbbbbb");
        Assert.False(_shelf.TryGet("b", out _));
        Assert.True(_shelf.TryGet("a", out _));
    }
}
