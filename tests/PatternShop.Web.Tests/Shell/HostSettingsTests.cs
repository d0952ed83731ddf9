using Microsoft.Extensions.Configuration;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class HostSettingsTests
{
    private static readonly string Root = Path.Combine(Path.GetPathRoot(AppContext.BaseDirectory)!, "srv", "shop");

    [Fact]
    public void Without_settings_the_data_lies_under_the_program_and_no_proxy_is_believed()
    {
        var settings = Read(out var problem);
        Assert.Null(problem);
        Assert.Equal(Path.Combine(Root, "data"), settings!.DataFolder);
        Assert.Null(settings.PublicAddress);
        Assert.Empty(settings.KnownProxies);
    }

    [Fact]
    public void Proxies_are_addresses_and_networks_in_one_text_or_a_list()
    {
        Assert.Equal(["10.0.0.7/32", "10.1.0.0/16", "::1/128"], Proxies(("KnownProxies", "10.0.0.7, 10.1.0.0/16 ,::1")));
        Assert.Equal(["10.0.0.7/32", "10.1.0.0/16"], Proxies(("KnownProxies:0", "10.0.0.7"), ("KnownProxies:1", "10.1.0.0/16")));
    }

    [Theory]
    [InlineData("KnownProxies", "everyone")]
    [InlineData("KnownProxies", "10.0.0.0/99")]
    [InlineData("PublicAddress", "patterns.example.org")]
    [InlineData("PublicAddress", "http://patterns.example.org")]
    [InlineData("PublicAddress", "https://patterns.example.org/shop")]
    public void A_bad_setting_is_named_with_its_value(string name, string value)
    {
        Assert.Null(Read(out var problem, (name, value)));
        Assert.Contains($"PatternShop:{name}", problem, StringComparison.Ordinal);
        Assert.Contains(value, problem, StringComparison.Ordinal);
    }

    [Fact]
    public void The_public_address_comes_in_its_one_form() =>
        Assert.Equal("https://patterns.example.org", Read(out _, ("PublicAddress", "HTTPS://Patterns.Example.org:443/"))!.PublicAddress);

    private static IEnumerable<string> Proxies(params (string, string)[] settings) => Read(out _, settings)!.KnownProxies.Select(network => network.ToString());

    private static HostSettings? Read(out string? problem, params (string Name, string Value)[] settings) => HostSettings.Read(
        new ConfigurationBuilder().AddInMemoryCollection(settings.ToDictionary(setting => "PatternShop:" + setting.Name, setting => (string?)setting.Value)).Build(),
        Root,
        out problem);
}
