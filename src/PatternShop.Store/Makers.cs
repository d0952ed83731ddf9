using System.Linq.Expressions;
using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using PatternShop.Weave;

namespace PatternShop.Store;

/// <summary>The makers, how the first one comes in, how they are known again, and what is set for the whole shop.</summary>
public sealed class Makers
{
    private readonly StoreAccess _store;
    private readonly HashingThreads _hashing;
    private readonly TimeProvider _time;
    private readonly RandomNumberGenerator _random;

    internal Makers(StoreAccess store, HashingThreads hashing, TimeProvider time, RandomNumberGenerator random)
    {
        _store = store;
        _hashing = hashing;
        _time = time;
        _random = random;
    }

    private static Expression<Func<MakerRow, Maker>> AsMaker { get; } =
        row => new Maker(new MakerId(row.Id), row.StudioName, row.Handle, row.Email, row.TimeZone, row.Stamp);

    public Task<bool> AnyAsync(CancellationToken cancellationToken = default) =>
        _store.ReadAsync(context => context.Makers.AnyAsync(cancellationToken), cancellationToken);

    /// <summary>A fresh code with which the first maker is made; codes given before are void. Null once there is a maker.</summary>
    public Task<string?> SetUpCodeAsync(CancellationToken cancellationToken = default) => _store.WriteAsync(
        async context =>
        {
            if (await context.Makers.AnyAsync(cancellationToken))
            {
                return null;
            }

            var code = Token.Make(_random, Token.SecretLength);
            await Settings.SetAsync(context, Settings.SetUpCode, SetUpCode.Hash(code), cancellationToken);
            return code;
        },
        cancellationToken);

    /// <summary>Whether this is the code that the first maker is made with. It is not used up by asking.</summary>
    public Task<bool> IsSetUpCodeAsync(string code, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(code);
        return _store.ReadAsync(context => SetUpCode.MatchesAsync(context, code, cancellationToken), cancellationToken);
    }

    /// <summary>Uses up the code and makes the first maker with their first patterns: all of it or nothing.</summary>
    /// <exception cref="ArgumentException">A sample breaks a rule of documents.</exception>
    public async Task<SetUpResult> SetUpAsync(string code, NewMaker maker, IReadOnlyList<PatternDocument> samples, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(code);
        ArgumentNullException.ThrowIfNull(maker);
        ArgumentNullException.ThrowIfNull(samples);
        var first = samples.Select(NewPattern.Of).ToList();
        // hashed outside of the transaction, so that nobody who wants to write waits for it; only for whoever has the code
        if (await _store.ReadAsync(context => SettingUp.FindObstacleAsync(context, code, maker, cancellationToken), cancellationToken) is { } obstacle)
        {
            return obstacle;
        }

        if (!_hashing.TryRun(HashingLane.Strangers, hashing => hashing.Hash(maker.Passphrase, _random), cancellationToken, out var hash))
        {
            return new SetUpResult.Busy();
        }

        var settingUp = new SettingUp(await hash, _time.GetUtcNow(), _random);
        return await _store.WriteAsync(context => settingUp.TryAsync(context, code, maker, first, cancellationToken), cancellationToken);
    }

    public Task<Maker?> FindAsync(MakerId id, CancellationToken cancellationToken = default) =>
        _store.ReadAsync(context => context.Makers.Where(row => row.Id == id.Value).Select(AsMaker).SingleOrDefaultAsync(cancellationToken), cancellationToken);

    /// <summary>The maker with this e-mail address; null when there is none.</summary>
    public Task<MakerId?> IdOfAsync(string email, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(email);
        var key = MakerRules.EmailKey(email);
        return _store.ReadAsync(
            context => context.Makers.Where(row => row.EmailKey == key).Select(row => (MakerId?)new MakerId(row.Id)).SingleOrDefaultAsync(cancellationToken),
            cancellationToken);
    }

    /// <summary>Whether somebody who signs in or sets up now would be told that it is busy.</summary>
    public bool IsBusy(HashingLane lane) => _hashing.IsFull(lane);

    /// <summary>Signs in. An unknown e-mail address takes as long as a wrong passphrase.</summary>
    /// <param name="email">The address, in any case.</param>
    /// <param name="passphrase">The passphrase.</param>
    /// <param name="lane">The queue that the passphrase waits in.</param>
    /// <param name="cancellationToken">Gives up the place in the queue.</param>
    public async Task<SignInResult> SignInAsync(string email, string passphrase, HashingLane lane, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(email);
        ArgumentNullException.ThrowIfNull(passphrase);
        var key = MakerRules.EmailKey(email);
        var row = await _store.ReadAsync(context => context.Makers.SingleOrDefaultAsync(row => row.EmailKey == key, cancellationToken), cancellationToken);
        // nobody's passphrase is longer; hashing megabytes would only keep the machine busy
        var tried = passphrase.Length <= MakerRules.PassphraseMost ? passphrase : "";
        if (!_hashing.TryRun(lane, hashing => Verify(hashing, tried, row?.PassphraseHash), cancellationToken, out var verified))
        {
            return new SignInResult.Busy();
        }

        var (isRight, stronger) = await verified;
        if (row is null || !isRight)
        {
            return new SignInResult.Wrong();
        }

        if (stronger is not null)
        {
            await ReplaceHashAsync(row, stronger, cancellationToken);
        }

        return new SignInResult.Done(AsMakerNow(row));
    }

    /// <summary>Whether a session that began with this stamp still stands. Asked again at every save.</summary>
    public Task<bool> IsCurrentAsync(MakerId id, string stamp, CancellationToken cancellationToken = default) =>
        _store.ReadAsync(context => context.Makers.AnyAsync(row => row.Id == id.Value && row.Stamp == stamp, cancellationToken), cancellationToken);

    /// <summary>Ends all sessions of a maker, in whatever window they stand open.</summary>
    public Task EndSessionsAsync(MakerId id, CancellationToken cancellationToken = default)
    {
        var stamp = Token.Make(_random, Token.SecretLength);
        return _store.WriteAsync(
            context => context.Makers.Where(row => row.Id == id.Value).ExecuteUpdateAsync(set => set.SetProperty(row => row.Stamp, stamp), cancellationToken),
            cancellationToken);
    }

    /// <summary>Gives a maker a new passphrase and ends all their sessions. For the operator, who needs no old one.</summary>
    public async Task<SetPassphraseResult> SetPassphraseAsync(string email, string newPassphrase, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(email);
        ArgumentNullException.ThrowIfNull(newPassphrase);
        var key = MakerRules.EmailKey(email);
        var maker = await _store.ReadAsync(context => context.Makers.Where(row => row.EmailKey == key).Select(AsMaker).SingleOrDefaultAsync(cancellationToken), cancellationToken);
        if (maker is null)
        {
            return new SetPassphraseResult.UnknownMaker();
        }

        if (MakerRules.Passphrase(newPassphrase, maker.Email, maker.StudioName).ToList() is { Count: > 0 } problems)
        {
            return new SetPassphraseResult.Refused(problems);
        }

        if (!_hashing.TryRun(HashingLane.KnownBrowsers, hashing => hashing.Hash(newPassphrase, _random), cancellationToken, out var hashed))
        {
            return new SetPassphraseResult.Busy();
        }

        var (hash, stamp) = (await hashed, Token.Make(_random, Token.SecretLength));
        var changed = await _store.WriteAsync(
            context => context.Makers
                .Where(row => row.Id == maker.Id.Value)
                .ExecuteUpdateAsync(set => set.SetProperty(row => row.PassphraseHash, hash).SetProperty(row => row.Stamp, stamp), cancellationToken),
            cancellationToken);
        return changed == 1 ? new SetPassphraseResult.Done() : new SetPassphraseResult.UnknownMaker();
    }

    /// <summary>The address under which readers reach the shop, without a slash at the end; null until it is set.</summary>
    public Task<string?> PublicAddressAsync(CancellationToken cancellationToken = default) =>
        _store.ReadAsync(context => Settings.GetAsync(context, Settings.PublicAddress, cancellationToken), cancellationToken);

    /// <summary>Sets the public address. Null when that is done, or what is wrong with it.</summary>
    public async Task<FieldProblem?> SetPublicAddressAsync(string address, CancellationToken cancellationToken = default)
    {
        var problem = PublicAddress.Read(address, out var form);
        if (problem is null)
        {
            await _store.WriteAsync(
                async context =>
                {
                    await Settings.SetAsync(context, Settings.PublicAddress, form, cancellationToken);
                    return true;
                },
                cancellationToken);
        }

        return problem;
    }

    // nobody's passphrase is empty; a missing maker costs what a wrong passphrase does
    private (bool IsRight, string? Stronger) Verify(PassphraseHashing hashing, string passphrase, string? hash)
    {
        if (hash is null || passphrase.Length == 0)
        {
            hashing.VerifyNothing(passphrase);
            return (false, null);
        }

        var isRight = hashing.Verify(passphrase, hash);
        return (isRight, isRight && hashing.IsWeak(hash) ? hashing.Hash(passphrase, _random) : null);
    }

    private Task<int> ReplaceHashAsync(MakerRow row, string better, CancellationToken cancellationToken)
    {
        var old = row.PassphraseHash;
        return _store.WriteAsync(
            context => context.Makers
                .Where(maker => maker.Id == row.Id && maker.PassphraseHash == old)
                .ExecuteUpdateAsync(set => set.SetProperty(maker => maker.PassphraseHash, better), cancellationToken),
            cancellationToken);
    }

    private static Maker AsMakerNow(MakerRow row) => new(new MakerId(row.Id), row.StudioName, row.Handle, row.Email, row.TimeZone, row.Stamp);
}
