using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>A data folder has one server at a time; commands run beside it.</summary>
public sealed class OneServerTests
{
    [Fact]
    public async Task A_second_server_on_a_data_folder_says_so_and_ends_with_code_1()
    {
        await using var shop = await TestShop.OpenAsync();
        using var errors = new StringWriter { NewLine = "\n" };
        var second = CommandLine.RunAsync(
            ["--PatternShop:DataFolder=" + shop.DataFolder, "--urls=http://127.0.0.1:0", "--Logging:Console:LogLevel:Default=None"], TextReader.Null, TextWriter.Null, errors);

        // far less than the half minute for which an opening waits
        Assert.Equal(1, await second.WaitAsync(TimeSpan.FromSeconds(15), TestContext.Current.CancellationToken));
        Assert.Equal(
            $"{shop.DataFolder}: Another PatternShop server is running on this data folder. Stop it first, or name another folder for this one with --PatternShop:DataFolder.\n",
            errors.ToString());
        Assert.Equal("Healthy", (await shop.Visit().GetAsync("/healthz")).Text);
    }
}
