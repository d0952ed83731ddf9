using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>Faults that a server meets when it starts, and the limits that it starts with.</summary>
public sealed class StartFaultTests
{
    [Fact]
    public async Task An_address_that_is_taken_is_said_in_one_line_and_ends_with_code_1()
    {
        await using var shop = await TestShop.OpenAsync();
        using var folder = new Folder();
        using var errors = new StringWriter { NewLine = "\n" };
        var code = await CommandLine.RunAsync(
            ["--PatternShop:DataFolder=" + folder.Path, "--urls=" + shop.Address, "--Logging:Console:LogLevel:Default=None"], TextReader.Null, TextWriter.Null, errors);
        Assert.Equal(1, code);
        Assert.StartsWith("The server can't listen at the address that --urls names.", errors.ToString(), StringComparison.Ordinal);
        Assert.Equal(1, errors.ToString().Count(character => character == '\n'));
    }

    [Theory]
    [InlineData(64, 10)]
    [InlineData(512, 28)]
    [InlineData(1024, 156)]
    [InlineData(1048576, 2000)]
    public void Connections_leave_file_handles_for_the_work(long files, int connections) => Assert.Equal(connections, ConnectionLimits.Of(files));

    [Fact]
    public async Task The_server_bounds_its_connections()
    {
        await using var shop = await TestShop.OpenAsync();
        var limits = shop.Services.GetRequiredService<IOptions<KestrelServerOptions>>().Value.Limits;
        Assert.InRange(limits.MaxConcurrentConnections ?? long.MaxValue, 10, 2000);
        Assert.InRange(limits.MaxConcurrentUpgradedConnections ?? long.MaxValue, 5, 1000);
    }
}
