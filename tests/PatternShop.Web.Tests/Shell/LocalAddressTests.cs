using Xunit;

namespace PatternShop.Web.Tests;

public sealed class LocalAddressTests
{
    [Theory]
    [InlineData("/studio")]
    [InlineData("/")]
    [InlineData("/studio/patterns/abc/issue?x=1#top")]
    public void A_path_here_is_followed(string address) => Assert.Equal(address, LocalAddress.OrStudio(address));

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("studio")]
    [InlineData("//example.org")]
    [InlineData("/\\example.org")]
    [InlineData("\\\\example.org")]
    [InlineData("/a\\..\\..\\example.org")]
    [InlineData("https://example.org/studio")]
    [InlineData("javascript:alert(1)")]
    [InlineData("/\t/example.org")]
    [InlineData("/\r\nLocation: https://example.org")]
    [InlineData(" /studio")]
    [InlineData("/studio/fünf")]
    [InlineData("/studio/\u2028")]
    [InlineData("/\u007f/example.org")]
    public void Anything_else_leads_to_the_workbench(string? address) => Assert.Equal("/studio", LocalAddress.OrStudio(address));
}
