using System.Text.Json;
using PatternShop.Tests.Shared;
using Xunit;
using YamlDotNet.Core;
using YamlDotNet.RepresentationModel;

namespace PatternShop.Web.Tests;

/// <summary>The container files hold together, with one another and with the program. No container engine is asked.</summary>
public sealed class DeployFileTests
{
    private static readonly IReadOnlyList<(string Word, string Text)> Image = Dockerfile.Final(Dockerfile.Read());

    private static readonly IReadOnlyDictionary<string, string> Variables = Dockerfile.Variables(Image);

    [Fact]
    public void The_server_does_not_run_as_root_and_its_folder_is_its_own()
    {
        var words = Image.Select(instruction => instruction.Word).ToList();
        Assert.Equal("$APP_UID", Only("USER"));
        Assert.True(words.IndexOf("USER") < words.IndexOf("ENTRYPOINT"));
        Assert.Equal(Variables["PatternShop__DataFolder"], Only("VOLUME"));
        Assert.Contains(Image, instruction => instruction.Word == "RUN" && instruction.Text.Contains($"chmod 0700 {Only("VOLUME")}", StringComparison.Ordinal));
    }

    [Fact]
    public void It_starts_what_was_published_and_asks_it_for_its_health()
    {
        Assert.Equal(["dotnet", "PatternShop.Web.dll"], JsonSerializer.Deserialize<string[]>(Only("ENTRYPOINT"))!);
        Assert.Equal(["dotnet", "PatternShop.Web.dll", "health"], Health());
        Assert.Equal(Variables["ASPNETCORE_HTTP_PORTS"], Only("EXPOSE"));
        Assert.StartsWith("mcr.microsoft.com/dotnet/aspnet:10.0", Only("FROM"), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_variable_of_ours_is_a_setting_that_the_program_knows()
    {
        var known = typeof(HostSettings).GetProperties().Select(property => "PatternShop__" + property.Name).ToList();
        var used = Variables.Keys.Concat(Map(Service(), "environment").Children.Keys.Select(key => key.ToString())).Where(name => name.StartsWith("PatternShop__", StringComparison.Ordinal)).ToList();
        Assert.Equal(3, used.Distinct(StringComparer.Ordinal).Count());
        Assert.All(used, name => Assert.Contains(name, known, StringComparer.Ordinal));
    }

    [Fact]
    public void The_service_is_built_from_this_tree_and_keeps_its_data_in_a_volume()
    {
        var build = Map(Service(), "build");
        Assert.Equal(".", Text(build, "context"));
        Assert.True(File.Exists(Checkout.Path(Text(build, "dockerfile"))));
        var volume = Assert.Single(List(Service(), "volumes")).Split(':');
        Assert.Equal(Only("VOLUME"), volume[1]);
        Assert.Contains(Map(Compose(), "volumes").Children.Keys, name => name.ToString() == volume[0]);
    }

    [Fact]
    public void The_service_is_reached_from_this_machine_only_and_has_no_rights_to_gain()
    {
        var port = Assert.Single(List(Service(), "ports"));
        Assert.StartsWith("127.0.0.1:", port, StringComparison.Ordinal);
        Assert.EndsWith(":" + Only("EXPOSE"), port, StringComparison.Ordinal);
        Assert.Equal(["ALL"], List(Service(), "cap_drop"));
        Assert.Contains("no-new-privileges:true", List(Service(), "security_opt"), StringComparer.Ordinal);
        Assert.False(Service().Children.ContainsKey("privileged"));
    }

    [Fact]
    public void The_service_is_asked_for_its_health_as_the_image_is() =>
        Assert.Equal(["CMD", .. Health()], List(Map(Service(), "healthcheck"), "test"));

    [Fact]
    public void Nothing_that_a_build_makes_or_a_server_keeps_is_copied_into_the_image()
    {
        var ignored = File.ReadAllLines(Checkout.Path(".dockerignore"));
        Assert.All(["**/bin", "**/obj", ".git", "data", "src/PatternShop.Web/data", "src/PatternShop.Web/wwwroot"], path => Assert.Contains(path, ignored, StringComparer.Ordinal));
    }

    [Fact]
    public void Files_that_do_not_parse_are_seen()
    {
        Assert.Throws<FormatException>(() => Dockerfile.Parse(["FROM x", "run y"]));
        Assert.Throws<FormatException>(() => Dockerfile.Parse(["FROM x", "RUN y \\"]));
        Assert.ThrowsAny<YamlException>(() => Yaml("services:\n  shop:\n - x"));
    }

    private static string Only(string word) => Assert.Single(Image, instruction => instruction.Word == word).Text;

    private static string[] Health() => JsonSerializer.Deserialize<string[]>(Only("HEALTHCHECK").Split("CMD", 2)[1])!;

    private static YamlMappingNode Compose() => Yaml(File.ReadAllText(Checkout.Path("docker-compose.yml")));

    private static YamlMappingNode Service() => (YamlMappingNode)Assert.Single(Map(Compose(), "services").Children).Value;

    private static YamlMappingNode Yaml(string text)
    {
        var stream = new YamlStream();
        stream.Load(new StringReader(text));
        return (YamlMappingNode)stream.Documents[0].RootNode;
    }

    private static YamlMappingNode Map(YamlMappingNode node, string name) => (YamlMappingNode)node.Children[name];

    private static string Text(YamlMappingNode node, string name) => ((YamlScalarNode)node.Children[name]).Value!;

    private static List<string> List(YamlMappingNode node, string name) => [.. ((YamlSequenceNode)node.Children[name]).Select(item => ((YamlScalarNode)item).Value!)];
}
