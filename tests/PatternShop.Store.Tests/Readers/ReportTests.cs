using Xunit;

namespace PatternShop.Store.Tests;

public sealed class ReportTests
{
    private static readonly NewReport Wrong = new(4, "Row 4 has a float too many.", "reader@example.org");

    [Fact]
    public async Task A_report_lies_on_the_makers_desk_and_its_answer_behind_the_readers_secret()
    {
        await using var store = await TestStore.OpenAsync();
        var anna = await store.MakerAsync();
        var id = await store.PatternAsync(anna);
        await store.IssueAsync(anna, id);
        var secret = Assert.IsType<SendResult.Sent>(await store.Reports.SendAsync(id, 1, Wrong)).Secret;
        var report = Assert.Single((await store.Reports.ListAsync(anna, id))!);
        Assert.Equal((id, 1, 4, Wrong.Text, Wrong.ReplyTo, null), (report.Pattern, report.Number, report.Row, report.Text, report.ReplyTo, report.Answer));
        Assert.Equal(1, (await store.Reports.WaitingAsync(anna))[id]);
        Assert.Empty((await store.Reports.AnswerAsync(anna, id, report.Id, "Thank you."))!);
        Assert.Equal("Thank you.", (await store.Reports.FindAsync(secret))!.Answer);
        Assert.Empty(await store.Reports.WaitingAsync(anna));
        using var raw = store.Raw();
        Assert.DoesNotContain(secret, string.Join('\n', raw.Dump()), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Only_versions_that_readers_see_are_reported_and_only_so_many()
    {
        await using var store = await TestStore.OpenAsync();
        var anna = await store.MakerAsync();
        var id = await store.PatternAsync(anna);
        Assert.IsType<SendResult.Missing>(await store.Reports.SendAsync(id, 1, Wrong));
        await store.IssueAsync(anna, id);
        Assert.IsType<SendResult.Missing>(await store.Reports.SendAsync(id, 2, Wrong));
        for (var sent = 0; sent < ReportDesk.WaitingMost; sent++)
        {
            Assert.IsType<SendResult.Sent>(await store.Reports.SendAsync(id, 1, Wrong));
        }

        Assert.IsType<SendResult.Full>(await store.Reports.SendAsync(id, 1, Wrong));
        await store.Workroom.WithdrawAsync(anna, id);
        Assert.IsType<SendResult.Missing>(await store.Reports.SendAsync(id, 1, Wrong));
    }

    [Theory]
    [InlineData("", "")]
    [InlineData(" \n", "")]
    [InlineData("a\u0007b", "")]
    [InlineData("fine", "a\u0000b")]
    [InlineData("Row 4 \u202Ekools", "")]
    [InlineData("half \uD83D", "")]
    [InlineData("fine", "\u2066reader@example.org")]
    [InlineData("fine", "two\nlines")]
    public async Task What_cannot_be_read_is_refused(string text, string replyTo)
    {
        await using var store = await TestStore.OpenAsync();
        var anna = await store.MakerAsync();
        var id = await store.PatternAsync(anna);
        await store.IssueAsync(anna, id);
        Assert.Single(Assert.IsType<SendResult.Refused>(await store.Reports.SendAsync(id, 1, new NewReport(null, text, replyTo))).Problems);
        Assert.IsType<SendResult.Refused>(await store.Reports.SendAsync(id, 1, new NewReport(null, new string('a', NewReport.TextMost + 1), "")));
        Assert.Empty((await store.Reports.ListAsync(anna, id))!);
    }

    [Fact]
    public async Task What_is_wrong_with_words_is_named_with_its_place_and_tabs_and_lines_are_taken()
    {
        Assert.Equal(
            [new FieldProblem("Text", "Character 3 of the text is U+202E, which can't be seen and changes the direction of the words after it.", "Remove it: delete the words around it and type them again.")],
            new NewReport(4, "ab\u202Ecd", "").Check());
        Assert.Equal([new FieldProblem("Text", "Character 2 of the text is U+0000, which cannot be shown.", "Remove it; lines end with a plain new line.")], new NewReport(4, "a\0b", "").Check());
        Assert.Equal([new FieldProblem("ReplyTo", "Character 2 of the address did not arrive as it was typed.", "Type it again.")], new NewReport(4, "a", "b\uFFFD").Check());
        Assert.Empty(new NewReport(4, "row\t4\nשלום \u200Fa\u200Db", "").Check());
        await using var store = await TestStore.OpenAsync();
        var anna = await store.MakerAsync();
        var id = await store.PatternAsync(anna);
        await store.IssueAsync(anna, id);
        await store.Reports.SendAsync(id, 1, Wrong);
        var report = Assert.Single((await store.Reports.ListAsync(anna, id))!).Id;
        var problem = Assert.Single((await store.Reports.AnswerAsync(anna, id, report, "Thanks\u202D!"))!);
        Assert.Equal("Character 7 of the answer is U+202D, which can't be seen and changes the direction of the words after it.", problem.What);
    }

    [Fact]
    public async Task Another_maker_reads_and_answers_nothing()
    {
        await using var store = await TestStore.OpenAsync();
        var (anna, ben) = (await store.MakerAsync(), await store.MakerAsync("ben"));
        var (id, his) = (await store.PatternAsync(anna), await store.PatternAsync(ben));
        await store.IssueAsync(anna, id);
        await store.Reports.SendAsync(id, 1, Wrong);
        var report = Assert.Single((await store.Reports.ListAsync(anna, id))!).Id;
        using var raw = store.Raw();
        var before = raw.Dump();
        Assert.Null(await store.Reports.ListAsync(ben, id));
        Assert.Empty(await store.Reports.WaitingAsync(ben));
        Assert.Null(await store.Reports.AnswerAsync(ben, id, report, "No."));
        Assert.Null(await store.Reports.AnswerAsync(ben, his, report, "No."));
        Assert.Equal(before, raw.Dump());
    }

    [Fact]
    public async Task A_correction_names_the_reports_of_its_pattern_that_it_answers_and_no_others()
    {
        await using var store = await TestStore.OpenAsync();
        var anna = await store.MakerAsync();
        var (id, other) = (await store.PatternAsync(anna), await store.PatternAsync(anna));
        await store.IssueAsync(anna, id);
        await store.IssueAsync(anna, other);
        await store.Reports.SendAsync(id, 1, Wrong);
        await store.Reports.SendAsync(other, 1, Wrong);
        var request = await store.RequestAsync(anna, id) with { Kind = VersionKind.Correction, Mends = [1, 2, 99] };
        Assert.IsType<IssueResult.Issued>(await store.Workroom.IssueAsync(anna, id, request));
        var version = (await store.Shelf.VersionAsync(id, 2))!;
        Assert.Equal(VersionKind.Correction, version.Kind);
        Assert.Equal([new MendedRow(1, 4)], version.Mends);
    }

    [Fact]
    public async Task A_report_knows_the_newest_correction_that_answers_it()
    {
        await using var store = await TestStore.OpenAsync();
        var anna = await store.MakerAsync();
        var id = await store.PatternAsync(anna);
        await store.IssueAsync(anna, id);
        var secrets = new List<string>();
        for (var sent = 0; sent < 12; sent++)
        {
            secrets.Add(Assert.IsType<SendResult.Sent>(await store.Reports.SendAsync(id, 1, Wrong)).Secret);
        }

        async Task MendAsync(params long[] reports) => Assert.IsType<IssueResult.Issued>(await store.Workroom.IssueAsync(
            anna, id, await store.RequestAsync(anna, id) with { Kind = VersionKind.Correction, Mends = reports }));

        // report 12 is neither 1 nor 2
        await MendAsync(1, 12);
        await MendAsync(2, 12);
        await MendAsync();
        var found = new List<int?>();
        foreach (var secret in secrets)
        {
            found.Add((await store.Reports.FindAsync(secret))!.CorrectedIn);
        }

        Assert.Equal([2, 3, .. Enumerable.Repeat<int?>(null, 9), 3], found);
    }
}
