using System.Text;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

/// <summary>The worked example of the README is what the engine makes.</summary>
public sealed class ReadmeTests
{
    [Fact]
    public void The_worked_facts_are_those_of_the_small_document()
    {
        var readme = File.ReadAllText(Path.Combine(Checkout.Top, "README.md"));
        var facts = Block(readme, "### A worked facts.json");
        Assert.Equal(facts, Facts(Block(readme, "### A small document")));
        Assert.NotEqual(facts, Facts(Block(readme, "### A small document").Replace("\"xx..\"", "\"x.x.\"", StringComparison.Ordinal)));
    }

    [Fact]
    public void The_colours_that_have_a_name_are_listed()
    {
        var line = File.ReadLines(Path.Combine(Checkout.Top, "README.md")).Single(line => line.StartsWith("| `cloth` |", StringComparison.Ordinal));
        var listed = line[(line.IndexOf("Colours with a name here: ", StringComparison.Ordinal) + "Colours with a name here: ".Length)..^2];
        Assert.Equal(NamedColours.All.Select(colour => colour.Name), listed.Split(", ").Select(name => name.Trim('`')));
    }

    private static string Facts(string document)
    {
        var read = Assert.IsType<ReadResult.Read>(PatternReader.Read(Encoding.UTF8.GetBytes(document)));
        return PieceFacts.Json(Piece.Of(read.Document), Wording.English);
    }

    private static string Block(string text, string heading)
    {
        const string Open = "```json\n";
        var start = text.IndexOf(Open, text.IndexOf(heading, StringComparison.Ordinal), StringComparison.Ordinal) + Open.Length;
        return text[start..text.IndexOf("```", start, StringComparison.Ordinal)];
    }
}
