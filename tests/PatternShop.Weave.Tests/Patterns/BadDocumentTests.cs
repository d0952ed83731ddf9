using System.Text;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class BadDocumentTests
{
    public static TheoryData<string> Names { get; } = new(BadDocuments.All.Select(bad => bad.Name));

    [Fact]
    public void The_document_that_the_bad_ones_are_made_from_is_good() =>
        Assert.IsType<ReadResult.Read>(PatternReader.Read(Encoding.UTF8.GetBytes(BadDocuments.Good)));

    [Theory]
    [MemberData(nameof(Names))]
    public void A_bad_document_is_refused_with_every_problem_in_its_place(string name)
    {
        var bad = BadDocuments.All.Single(document => document.Name == name);
        var problems = Assert.IsType<ReadResult.Refused>(PatternReader.Read(bad.Utf8)).Problems;
        Assert.Equal(bad.Expected.Split('\n'), problems.Select(p => $"{p.Code} {p.Pointer} {p.Line}:{p.Column}"), StringComparer.Ordinal);
        Assert.All(problems, AssertReadable);
    }

    [Theory]
    [InlineData("row too short", "Row 2 of the motif has 3 cells, row 1 has 4.", "Give every row the same number of cells.")]
    [InlineData("strange cell", "Cell 2 of row 2 of the motif is \"o\".", "Write x where the weft is over and . where it is under.")]
    [InlineData("unknown side", "\"top\" has no meaning for \"start\".", "Write \"left\" or \"right\".")]
    [InlineData("weft that is not listed", "There is no weft 3: the row plan lists 2 wefts.", "Choose a weft that the row plan lists; the first is 1.")]
    [InlineData("too many ends across", "The piece would have 1003 pattern ends; at most 1000 are allowed.", "Repeat the motif fewer times across, or take fewer balance ends.")]
    [InlineData("newer format", "The file is of format 5; this program knows formats up to 4.", "Open it with the newer program that wrote it, and bring this one up to date.")]
    [InlineData("members of format 3 in format 1", "\"rowWords\" has no meaning before format 3.", "Remove it, or write the file in format 3.")]
    [InlineData("colours in format 3", "\"cloth\" has no meaning before format 4.", "Remove it, or write the file in format 4.")]
    [InlineData("order without a colour", "Part 2 of the order is \"2\", which is not a count and a colour.", "Write counts and colours with commas between, such as \"6 blue, 2 white\".")]
    [InlineData("order of an unknown colour", "There is no colour called \"wite\".", "Choose a colour that has a name here, such as white, red or blue, or add it to your own colours.")]
    [InlineData("more wefts than there are", "The cloth describes 3 wefts, the row plan lists 2.", "Describe no more wefts than there are.")]
    [InlineData("own colour with a name of ours", "\"blue\" is the name of a colour already.", "Give this colour another name.")]
    [InlineData("video at a script", "\"javascript:alert(1)//https://films.examp…\" is not an address that can be linked to.", "Copy the address of the video's page; it begins with https:// and has at most 500 characters.")]
    [InlineData("words for one row twice", "The words of row 2 stand after those of row 2.", "Name the rows upwards, each once.")]
    [InlineData("limits that say nothing", "The limits say neither threads nor a length.", "Give one of them or both, or take the limits away.")]
    [InlineData("control character in the title", "Character 4 of the title is U+0085, which cannot be shown.", "Remove it, or replace it by a space.")]
    [InlineData("comma missing", "There should be a comma or the '}' that ends the object here, not a quotation mark.", "Fix this place, then read the file again: what follows was not read.")]
    [InlineData("two commas", "There should be a value here, not \",\".", "Fix this place, then read the file again: what follows was not read.")]
    [InlineData("end missing", "There should be a comma or the '}' that ends the object here, not the end of the file.", "Fix this place, then read the file again: what follows was not read.")]
    [InlineData("comma too many", "This comma has nothing after it: the list ends there.", "Remove the comma.")]
    [InlineData("comment", "A comment starts here; a pattern file can't hold any.", "Remove the comment. What readers should know can go into \"notes\".")]
    [InlineData("NaN", "NaN isn't a number that a pattern can hold.", "Write a number in digits, such as 12. What follows was not read.")]
    [InlineData("minus infinity", "-Infinity isn't a number that a pattern can hold.", "Write a number in digits, such as 12. What follows was not read.")]
    [InlineData("number with an exponent beyond all", "1e400 is larger than any number that is used here.", "Write a smaller number, in digits.")]
    [InlineData("number with an exponent far below zero", "-1e400 is smaller than any number that is used here.", "Write a larger number, in digits.")]
    [InlineData("number beyond all", "99999999999999999999 is larger than any number that is used here.", "Write a smaller number, in digits.")]
    [InlineData("repeats with an exponent", "2e0 is not written as a whole number.", "Write it without point and exponent.")]
    [InlineData("no format", "\"format\" is missing.", "Add \"format\": 4.")]
    [InlineData("not JSON at all", "This isn't a PatternShop file.", "Choose a pattern that was downloaded from PatternShop; its name ends in .json.")]
    [InlineData("a list", "This isn't a PatternShop file: it holds a list, not a pattern.", "Choose a file that holds a pattern, an object in braces.")]
    [InlineData("PNG", "This isn't a PatternShop file: it is a PNG picture.", "Choose a pattern that was downloaded from PatternShop; its name ends in .json.")]
    [InlineData("PDF", "This isn't a PatternShop file: it is a PDF document.", "Choose a pattern that was downloaded from PatternShop; its name ends in .json.")]
    [InlineData("ZIP", "This isn't a PatternShop file: it is a ZIP archive.", "Choose a pattern that was downloaded from PatternShop; its name ends in .json.")]
    [InlineData("UTF-16", "This isn't a PatternShop file: its text is UTF-16.", "If it is a pattern, open it in a text editor, save it as UTF-8, then read it again.")]
    [InlineData("UTF-32", "This isn't a PatternShop file: its text is UTF-32.", "If it is a pattern, open it in a text editor, save it as UTF-8, then read it again.")]
    [InlineData("Latin-1 outside texts", "A byte here is not UTF-8.", "Save the file as UTF-8, then read it again: what follows was not read.")]
    [InlineData("zero in the title", "Character 4 of the title is U+0000, which cannot be shown.", "Remove it, or replace it by a space.")]
    [InlineData("title turned around", "Character 4 of the title is U+202E, which can't be seen and changes the direction of the words after it.", "Remove it: delete the words around it and type them again.")]
    [InlineData("too large", "The file is larger than 4 MB, the most that a pattern file may be.", "Choose a pattern file; they are much smaller.")]
    public void Problems_are_said_in_plain_words(string name, string what, string remedy)
    {
        var bad = BadDocuments.All.Single(document => document.Name == name);
        var problem = Assert.Single(Assert.IsType<ReadResult.Refused>(PatternReader.Read(bad.Utf8)).Problems);
        Assert.Equal((what, remedy), (problem.What, problem.Remedy));
    }

    [Fact]
    public void The_last_problem_says_how_many_more_there_are()
    {
        var bad = BadDocuments.All.Single(document => document.Name == "more problems than are listed");
        var problems = Assert.IsType<ReadResult.Refused>(PatternReader.Read(bad.Utf8)).Problems;
        // 250 strange members, and format, title, motif, width and gauge missing
        Assert.Equal("There are 55 more.", problems[^1].What);
        Assert.Equal(Bounds.ListedProblems + 1, problems.Count);
    }

    [Theory]
    [InlineData("\r\n", 3)]
    [InlineData("\r", 3)]
    [InlineData("\n", 3)]
    public void Lines_end_as_they_do_on_any_system(string end, int line)
    {
        var json = BadDocuments.Good.Replace("Sample", "", StringComparison.Ordinal).ReplaceLineEndings(end);
        var problem = Assert.Single(Assert.IsType<ReadResult.Refused>(PatternReader.Read(Encoding.UTF8.GetBytes(json))).Problems);
        Assert.Equal((line, 10), (problem.Line, problem.Column));
    }

    [Fact]
    public void Columns_count_characters_not_bytes()
    {
        byte[] json = [0xEF, 0xBB, 0xBF, .. "{\"é😀中\": 1, \"x\": x}"u8];
        var problem = Assert.IsType<ReadResult.Refused>(PatternReader.Read(json)).Problems[0];
        Assert.Equal(("/x", 1, 17), (problem.Pointer, problem.Line, problem.Column));
    }

    internal static void AssertReadable(Problem problem)
    {
        Assert.EndsWith(".", problem.What, StringComparison.Ordinal);
        Assert.EndsWith(".", problem.Remedy, StringComparison.Ordinal);
        Assert.True(char.IsUpper(problem.Remedy[0]), problem.Remedy);
        Assert.InRange(problem.What.Length, 10, 200);
        Assert.InRange(problem.Remedy.Length, 10, 200);
        Assert.DoesNotContain(problem.What + problem.Remedy, char.IsControl);
    }
}
