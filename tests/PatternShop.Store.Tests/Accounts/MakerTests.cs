using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Store.Tests;

public sealed class MakerTests
{
    public static NewMaker Anna { get; } = new("Studio Anna", "anna", "Anna@Example.org", TestStore.Passphrase, "UTC");

    private static readonly PatternDocument[] Samples = [Charts.Document(Charts.TenEndDiamond), Charts.Document("x./.x"), Charts.Document("xx../..xx")];

    [Fact]
    public async Task The_first_maker_comes_in_with_the_code_and_three_samples()
    {
        await using var store = await TestStore.OpenAsync();
        Assert.False(await store.Makers.AnyAsync());
        var code = await store.Makers.SetUpCodeAsync();
        var done = Assert.IsType<SetUpResult.Done>(await store.Makers.SetUpAsync(code!, Anna, Samples));
        Assert.True(await store.Makers.AnyAsync());
        Assert.Null(await store.Makers.SetUpCodeAsync());
        var maker = (await store.Makers.FindAsync(done.Maker))!;
        Assert.Equal(("Studio Anna", "anna", "Anna@Example.org", "UTC"), (maker.StudioName, maker.Handle, maker.Email, maker.TimeZone));
        Assert.Equal(3, (await store.Workroom.ListAsync(done.Maker)).Count);
        Assert.Empty(await store.Shelf.ListAsync());
        Assert.IsType<SetUpResult.AlreadySetUp>(await store.Makers.SetUpAsync(code!, Anna with { Handle = "ben", Email = "ben@example.org" }, []));
    }

    [Fact]
    public async Task Only_the_newest_code_opens_the_door()
    {
        await using var store = await TestStore.OpenAsync();
        Assert.IsType<SetUpResult.WrongCode>(await store.Makers.SetUpAsync("", Anna, Samples));
        var old = (await store.Makers.SetUpCodeAsync())!;
        var code = (await store.Makers.SetUpCodeAsync())!;
        Assert.NotEqual(old, code);
        Assert.Matches("^[0-9a-hjkmnp-tv-z]{26}$", code);
        foreach (var wrong in new[] { old, "", code[1..], code + "0" })
        {
            Assert.IsType<SetUpResult.WrongCode>(await store.Makers.SetUpAsync(wrong, Anna, Samples));
        }

        Assert.False(await store.Makers.AnyAsync());
        var typed = $" {code[..4].ToUpperInvariant()}-{code[4..]} ";
        Assert.IsType<SetUpResult.Done>(await store.Makers.SetUpAsync(typed, Anna, Samples));
    }

    [Fact]
    public async Task A_refused_maker_does_not_use_up_the_code()
    {
        await using var store = await TestStore.OpenAsync();
        var code = (await store.Makers.SetUpCodeAsync())!;
        var refused = Assert.IsType<SetUpResult.Refused>(await store.Makers.SetUpAsync(code, new NewMaker("", "A", "nowhere", "short", "Mars/Olympus"), Samples));
        Assert.Equal(["StudioName", "Handle", "Email", "Passphrase", "TimeZone"], refused.Problems.Select(problem => problem.Field));
        await Assert.ThrowsAsync<ArgumentException>(() => store.Makers.SetUpAsync(code, Anna, [Samples[0] with { Title = "" }]));
        Assert.IsType<SetUpResult.Done>(await store.Makers.SetUpAsync(code, Anna, Samples));
    }

    [Fact]
    public async Task Two_at_once_make_one_maker()
    {
        for (var round = 0; round < 5; round++)
        {
            await using var store = await TestStore.OpenAsync();
            await using var left = store.Beside();
            await using var right = store.Beside();
            var code = (await store.Makers.SetUpCodeAsync())!;
            var ben = new NewMaker("Studio Ben", "ben", "ben@example.org", TestStore.Passphrase, "UTC");
            var results = await Task.WhenAll(
                Task.Run(() => left.Makers.SetUpAsync(code, Anna, Samples)),
                Task.Run(() => right.Makers.SetUpAsync(code, ben, Samples)));
            var done = Assert.Single(results.OfType<SetUpResult.Done>());
            Assert.Single(results.OfType<SetUpResult.AlreadySetUp>());
            Assert.Equal(3, (await store.Workroom.ListAsync(done.Maker)).Count);
            using var raw = store.Raw();
            Assert.Equal(1L, raw.Sql("SELECT count(*) FROM Makers"));
            Assert.Equal(3L, raw.Sql("SELECT count(*) FROM Patterns"));
        }
    }

    [Fact]
    public async Task Neither_passphrases_nor_codes_are_kept_in_the_clear()
    {
        await using var store = await TestStore.OpenAsync();
        var code = (await store.Makers.SetUpCodeAsync())!;
        using var raw = store.Raw();
        Assert.DoesNotContain(raw.Dump(), row => row.Contains(code, StringComparison.OrdinalIgnoreCase));
        await store.Makers.SetUpAsync(code, Anna, []);
        Assert.DoesNotContain(raw.Dump(), row => row.Contains(Anna.Passphrase, StringComparison.OrdinalIgnoreCase));
        Assert.DoesNotContain(Anna.Passphrase, Anna.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wrong_passphrase_and_an_unknown_maker_get_one_answer_for_one_price()
    {
        await using var store = await TestStore.OpenAsync();
        var id = await store.MakerAsync();
        Assert.Equal(id, (await store.SignInAsync(" ANNA@example.ORG ", TestStore.Passphrase))?.Id);
        var paid = new List<int>();
        using var threads = new HashingThreads(new PassphraseHashing(10, (passphrase, salt, rounds) =>
        {
            paid.Add(rounds);
            return PassphraseHashing.Pbkdf2(passphrase, salt, rounds);
        }));
        var makers = new Makers(store.Access, threads, store.Time, store.Random);
        foreach (var (email, passphrase) in new[]
        {
            ("anna@example.org", "seven long grey thread"), ("nobody@example.org", TestStore.Passphrase), ("", ""), ("anna@example.org", ""), ("anna@example.org", new string('x', 100_000)),
        })
        {
            paid.Clear();
            Assert.IsType<SignInResult.Wrong>(await makers.SignInAsync(email, passphrase, HashingLane.Strangers));
            Assert.Equal([10], paid);
        }
    }

    [Fact]
    public async Task A_new_passphrase_ends_the_sessions_before_it()
    {
        await using var store = await TestStore.OpenAsync();
        var id = await store.MakerAsync();
        var before = (await store.Makers.FindAsync(id))!;
        Assert.True(await store.Makers.IsCurrentAsync(id, before.Stamp));
        Assert.False(await store.Makers.IsCurrentAsync(TestStore.Nobody, before.Stamp));
        Assert.IsType<SetPassphraseResult.UnknownMaker>(await store.Makers.SetPassphraseAsync("ben@example.org", "another seven threads"));
        Assert.IsType<SetPassphraseResult.Refused>(await store.Makers.SetPassphraseAsync("anna@example.org", "too short"));
        Assert.True(await store.Makers.IsCurrentAsync(id, before.Stamp));
        Assert.IsType<SetPassphraseResult.Done>(await store.Makers.SetPassphraseAsync("Anna@example.org", "another seven threads"));
        Assert.False(await store.Makers.IsCurrentAsync(id, before.Stamp));
        Assert.Null(await store.SignInAsync("anna@example.org", TestStore.Passphrase));
        var after = (await store.SignInAsync("anna@example.org", "another seven threads"))!;
        Assert.True(await store.Makers.IsCurrentAsync(id, after.Stamp));
    }

    [Fact]
    public async Task Hashes_grow_stronger_at_the_next_sign_in()
    {
        await using var store = await TestStore.OpenAsync();
        var before = (await store.Makers.FindAsync(await store.MakerAsync()))!;
        using var threads = new HashingThreads(new PassphraseHashing(20, PassphraseHashing.Pbkdf2));
        var stronger = new Makers(store.Access, threads, store.Time, store.Random);
        using var raw = store.Raw();
        Assert.IsType<SignInResult.Wrong>(await stronger.SignInAsync("anna@example.org", "seven long grey thread", HashingLane.Strangers));
        Assert.StartsWith("pbkdf2-sha512$10$", (string)raw.Sql("SELECT PassphraseHash FROM Makers")!, StringComparison.Ordinal);
        Assert.Equal(new SignInResult.Done(before), await stronger.SignInAsync("anna@example.org", TestStore.Passphrase, HashingLane.Strangers));
        Assert.StartsWith("pbkdf2-sha512$20$", (string)raw.Sql("SELECT PassphraseHash FROM Makers")!, StringComparison.Ordinal);
        Assert.Equal(before, await store.SignInAsync("anna@example.org", TestStore.Passphrase));
    }

    [Fact]
    public async Task The_public_address_is_kept_in_one_form()
    {
        await using var store = await TestStore.OpenAsync();
        Assert.Null(await store.Makers.PublicAddressAsync());
        Assert.Null(await store.Makers.SetPublicAddressAsync(" HTTPS://Patterns.Example.org/ "));
        Assert.Equal("https://patterns.example.org", await store.Makers.PublicAddressAsync());
        Assert.NotNull(await store.Makers.SetPublicAddressAsync("http://example.org"));
        Assert.Equal("https://patterns.example.org", await store.Makers.PublicAddressAsync());
        Assert.Null(await store.Makers.SetPublicAddressAsync("http://localhost:5000"));
        Assert.Equal("http://localhost:5000", await store.Makers.PublicAddressAsync());
    }
}
