using System.Text.Json;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>The render command as its caller sees it: files, messages and exit codes.</summary>
public sealed class RenderCommandTests
{
    private static readonly string[] Kinds = ["a4.pdf", "chart.svg", "directions.txt", "facts.json", "letter.pdf"];

    public static TheoryData<string> Names => [.. SamplePages.Names];

    [Fact]
    public async Task Every_file_of_every_document_is_made()
    {
        using var folder = new Folder();
        var run = await Run([.. SamplePages.Names.Select(SamplePages.File), "--out", folder["made"]]);
        Assert.Equal((0, ""), (run.Code, run.Errors));
        var expected = SamplePages.Names.SelectMany(name => Kinds.Select(kind => Path.Combine("made", $"{name}.{kind}"))).Order(StringComparer.Ordinal).ToList();
        Assert.Equal(expected, folder.Names);
        Assert.Equal(expected, run.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(path => Path.GetRelativePath(folder.Path, path)).Order(StringComparer.Ordinal));
        Assert.DoesNotContain(folder.Names, name => new FileInfo(folder[name]).Length == 0);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Facts_say_what_the_definitions_give(string name)
    {
        using var folder = new Folder();
        using var facts = await Facts(folder, SamplePages.File(name));
        Assert.Empty(FactsForm.Faults(facts.RootElement, Read(SamplePages.File(name))));
    }

    [Fact]
    public async Task The_judge_of_facts_names_what_is_wrong()
    {
        using var folder = new Folder();
        var document = Read(SamplePages.File("hazel-diamonds"));
        using var facts = await Facts(folder, SamplePages.File("hazel-diamonds"));
        var motif = BitGrid.Create(document.Motif.Rows, document.Motif.Columns, (row, end) => document.Motif[row, end] ^ (row == 2 && end == 4));
        var faults = FactsForm.Faults(facts.RootElement, document with { Motif = motif });
        Assert.Equal(["chart is", "row 3: runs is", "row 3: text is", "row 13: runs is", "row 13: text is"], faults.Select(fault => fault[..(fault.IndexOf(" is ", StringComparison.Ordinal) + 3)]));
        Assert.Equal("ends is 23, not 43", FactsForm.Faults(facts.RootElement, document with { Width = document.Width with { Repeats = 4 } })[1]);
        Assert.Contains("not as promised: input.chart", FactsForm.Faults(JsonDocument.Parse("{}").RootElement, document));
    }

    [Fact]
    public async Task What_is_found_is_written_too()
    {
        using var folder = new Folder();
        var twill = Charts.Document("xx../.xx./..xx/x..x", repeats: 2) with { Limits = new Limits(1, null) };
        await File.WriteAllBytesAsync(folder["twill.json"], PatternWriter.ReadableBytes(twill), TestContext.Current.CancellationToken);
        using var facts = await Facts(folder, folder["twill.json"]);
        var findings = facts.RootElement.GetProperty("findings").EnumerateArray().ToList();
        Assert.Equal(
            ["fault turns", "fault turns", "caution floats", "caution floats", "caution floats", "caution floats"],
            findings.Select(finding => $"{finding.GetProperty("severity").GetString()} {finding.GetProperty("kind").GetString()}"));
        Assert.Equal("Start at the right", findings[0].GetProperty("remedies")[0].GetProperty("text").GetString());
        var directions = await File.ReadAllLinesAsync(folder["twill.directions.txt"], TestContext.Current.CancellationToken);
        Assert.Equal(findings.Take(2).Select(fault => $"Fault: {fault.GetProperty("text").GetString()} {fault.GetProperty("why").GetString()}"), directions.Where(line => line.StartsWith("Fault", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task A_bad_file_is_explained_and_the_others_are_made()
    {
        using var folder = new Folder();
        var bad = folder.Write("bad.json", (await File.ReadAllTextAsync(SamplePages.File("kestrel"), TestContext.Current.CancellationToken))
            .Replace("\"repeats\": 3", "\"repeats\": 0", StringComparison.Ordinal));
        var run = await Run([SamplePages.File("first-steps"), bad, SamplePages.File("pebble-basket"), "--out", folder["made"]]);
        Assert.Equal(1, run.Code);
        Assert.Equal(Kinds.Length * 2, Directory.GetFiles(folder["made"]).Length);
        var lines = run.Errors.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal($"{bad}: not made, 1 problem", lines[0]);
        var line = LineOf(bad, "\"repeats\"");
        Assert.Equal(2, lines.Length);
        Assert.StartsWith($"  {bad}:{line.Number}:{line.Column} /width/repeats [repeats] ", lines[1], StringComparison.Ordinal);
        var problem = Assert.Single(((ReadResult.Refused)PatternReader.Read(await File.ReadAllBytesAsync(bad, TestContext.Current.CancellationToken))).Problems);
        Assert.NotEmpty(problem.Remedy);
        Assert.EndsWith($"{problem.What} {problem.Remedy}", lines[1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_that_is_no_text_at_all_is_explained_too()
    {
        using var folder = new Folder();
        var bad = folder["picture.json"];
        await File.WriteAllBytesAsync(bad, [0x89, 0x50, 0x4E, 0x47, 0xFF, 0x00], TestContext.Current.CancellationToken);
        var run = await Run([bad, "--out", folder["made"]]);
        Assert.Equal(1, run.Code);
        Assert.Contains($"{bad}: not made, ", run.Errors, StringComparison.Ordinal);
        Assert.Contains($"  {bad}:1:1 (whole file) [", run.Errors, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder["made"]));
    }

    [Fact]
    public async Task A_missing_file_is_named_and_the_others_are_made()
    {
        using var folder = new Folder();
        var run = await Run([folder["gone.json"], SamplePages.File("kestrel"), "--out", folder["made"]]);
        Assert.Equal(1, run.Code);
        Assert.StartsWith($"{folder["gone.json"]}: not made: ", run.Errors, StringComparison.Ordinal);
        Assert.Equal(Kinds.Length, Directory.GetFiles(folder["made"]).Length);
    }

    [Fact]
    public async Task Of_two_files_of_one_name_the_second_is_refused()
    {
        using var folder = new Folder();
        Directory.CreateDirectory(folder["other"]);
        var twin = folder.Write(Path.Combine("other", "Kestrel.json"), await File.ReadAllTextAsync(SamplePages.File("first-steps"), TestContext.Current.CancellationToken));
        var run = await Run([SamplePages.File("kestrel"), twin, "--out", folder["made"]]);
        Assert.Equal(1, run.Code);
        Assert.Contains($"{twin}: not made: its files would be named like those of {SamplePages.File("kestrel")}", run.Errors, StringComparison.Ordinal);
        Assert.Equal(Kinds.Length, Directory.GetFiles(folder["made"]).Length);
        Assert.StartsWith("Kestrel\n", await File.ReadAllTextAsync(Path.Combine(folder["made"], "kestrel.directions.txt"), TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    private static async Task<(int Code, string Output, string Errors)> Run(string[] args)
    {
        await using var output = new StringWriter { NewLine = "\n" };
        await using var errors = new StringWriter { NewLine = "\n" };
        var code = await RenderCommand.RunAsync(args, output, errors);
        return (code, output.ToString(), errors.ToString());
    }

    private static async Task<JsonDocument> Facts(Folder folder, string file)
    {
        Assert.Equal(0, (await Run([file, "--out", folder.Path])).Code);
        return JsonDocument.Parse(await File.ReadAllBytesAsync(folder[Path.GetFileNameWithoutExtension(file) + ".facts.json"], TestContext.Current.CancellationToken));
    }

    private static PatternDocument Read(string file) => ((ReadResult.Read)PatternReader.Read(File.ReadAllBytes(file))).Document;

    // where the value of a member stands, counted as an editor does
    private static (int Number, int Column) LineOf(string file, string member)
    {
        var lines = File.ReadAllLines(file);
        var index = Array.FindIndex(lines, line => line.Contains(member, StringComparison.Ordinal));
        return (index + 1, lines[index].IndexOf(": ", StringComparison.Ordinal) + 3);
    }
}
