using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>What the render command says of files, folders and words that it cannot use: what, where and what to do; and its exit code.</summary>
public sealed class RenderRefusalTests
{
    private const string Usage = "usage: render FILE… --out DIR\n";

    [Theory]
    [InlineData("No pattern file is named. Name one or more.")]
    [InlineData("--out is missing. Write --out and the folder in which the files are to be made.", "a.json")]
    [InlineData("There is no folder after --out. Write --out and the folder in which the files are to be made.", "a.json", "--out")]
    [InlineData("There is no folder after --out. Write --out and the folder in which the files are to be made.", "--out", "", "a.json")]
    [InlineData("There is no folder after --out. Write --out and the folder in which the files are to be made.", "a.json", "--out", "--out", "made")]
    [InlineData("No pattern file is named. Name one or more.", "--out", "made")]
    [InlineData("render has no option --fast. Leave it out.", "a.json", "--out", "made", "--fast")]
    [InlineData("--out is given twice: made, there. Give one folder.", "--out", "made", "a.json", "--out", "there")]
    public async Task Wrong_use_is_named_and_answered_with_the_right_one(string said, params string[] args)
    {
        var run = await Run(args);
        Assert.Equal((2, ""), (run.Code, run.Output));
        Assert.StartsWith($"{said}\n{Usage}", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_that_is_not_there_is_named()
    {
        using var folder = new Folder();
        var missing = folder["gone.json"];
        await Refuses(missing, "there is no such file. Check the name, and the folder from which it is named.", folder);
        await Refuses(Path.Combine(folder["gone"], "a.json"), "there is no such file. Check the name, and the folder from which it is named.", folder);
        await Refuses("", "this can't be the name of a file. Name a pattern file.", folder);
    }

    [Fact]
    public async Task A_folder_is_no_file()
    {
        using var folder = new Folder();
        Directory.CreateDirectory(folder["patterns"]);
        await Refuses(folder["patterns"], "this is a folder. Name the pattern files in it.", folder);
        await Refuses(folder["patterns"] + Path.DirectorySeparatorChar, "this is a folder. Name the pattern files in it.", folder);
    }

    [Fact]
    public async Task A_link_that_leads_to_itself_or_to_nothing_is_named()
    {
        using var folder = new Folder();
        File.CreateSymbolicLink(folder["round.json"], folder["round.json"]);
        File.CreateSymbolicLink(folder["there.json"], folder["back.json"]);
        File.CreateSymbolicLink(folder["back.json"], folder["there.json"]);
        File.CreateSymbolicLink(folder["lost.json"], folder["gone.json"]);
        await Refuses(folder["round.json"], "this is a link that leads back to itself. Name the file itself.", folder);
        await Refuses(folder["there.json"], "this is a link that leads back to itself. Name the file itself.", folder);
        await Refuses(Path.Combine(folder["round.json"], "a.json"), "this is a link that leads back to itself. Name the file itself.", folder);
        await Refuses(folder["lost.json"], $"this is a link to {folder["gone.json"]}, which isn't there. Name the file itself.", folder);
    }

    /// <summary>Far larger than memory, and without an end where the system has such a file.</summary>
    [Fact]
    public async Task A_file_is_read_no_further_than_a_pattern_file_may_be_long()
    {
        using var folder = new Folder();
        var huge = folder["huge.json"];
        await using (var file = File.Create(huge))
        {
            // only its length: no block of it is written
            file.SetLength(1L << 40);
        }

        foreach (var path in new[] { huge, "/dev/zero" }.Where(File.Exists))
        {
            var run = await Run([path, "--out", folder["made"]]);
            Assert.Equal((1, ""), (run.Code, run.Output));
            Assert.Equal($"{path}: not made, 1 problem\n  {path}:1:1 (whole file) [file-too-large] The file is larger than 4 MB, the most that a pattern file may be. Choose a pattern file; they are much smaller.\n", run.Errors);
        }
    }

    [Fact]
    public async Task A_folder_for_the_files_whose_name_is_taken_is_named_once()
    {
        using var folder = new Folder();
        var taken = folder.Write("taken", "");
        var within = Path.Combine(taken, "made");
        File.CreateSymbolicLink(folder["round"], folder["round"]);
        await RefusesFolder(taken, "this is a file, not a folder.");
        await RefusesFolder(within, $"this folder can't be made: {taken} is not a folder.");
        await RefusesFolder(folder["round"], $"this is a link to {folder["round"]}, which is not a folder.");
        await RefusesFolder(folder[new string('n', 300)], "the name of this folder is too long.");
        Assert.Equal(["round", "taken"], folder.Names);
    }

    [Fact]
    public async Task A_name_that_is_taken_in_the_folder_is_named_and_the_others_are_made()
    {
        using var folder = new Folder();
        var taken = Path.Combine(folder["made"], "kestrel.directions.txt");
        Directory.CreateDirectory(taken);
        var run = await Run([SamplePages.File("kestrel"), SamplePages.File("first-steps"), "--out", folder["made"]]);
        Assert.Equal(1, run.Code);
        Assert.Equal($"{SamplePages.File("kestrel")}: not made: {taken} can't be written: a folder has this name. Choose another folder with --out.\n", run.Errors);
        Assert.True(File.Exists(Path.Combine(folder["made"], "first-steps.letter.pdf")));
    }

    private static async Task Refuses(string file, string said, Folder folder)
    {
        var run = await Run([file, "--out", folder["made"]]);
        Assert.Equal((1, "", $"{file}: not made: {said}\n"), (run.Code, run.Output, run.Errors));
        Assert.False(Directory.Exists(folder["made"]));
    }

    private static async Task RefusesFolder(string made, string said)
    {
        var run = await Run([SamplePages.File("kestrel"), SamplePages.File("first-steps"), "--out", made]);
        Assert.Equal((1, "", $"{made}: not made: {said} Choose another folder with --out.\n"), (run.Code, run.Output, run.Errors));
    }

    private static async Task<(int Code, string Output, string Errors)> Run(string[] args)
    {
        await using var output = new StringWriter { NewLine = "\n" };
        await using var errors = new StringWriter { NewLine = "\n" };
        var code = await RenderCommand.RunAsync(args, output, errors);
        return (code, output.ToString(), errors.ToString());
    }
}
