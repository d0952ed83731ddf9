using System.Linq.Expressions;
using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using PatternShop.Weave;

namespace PatternShop.Store;

/// <summary>The makers, how the first one comes in, how they are known again, and what is set for the whole shop.</summary>
public sealed class Makers
{
    private readonly StoreAccess _store;
    private readonly PassphraseHashing _hashing;
    private readonly TimeProvider _time;
    private readonly RandomNumberGenerator _random;

    internal Makers(StoreAccess store, PassphraseHashing hashing, TimeProvider time, RandomNumberGenerator random)
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
    public Task<SetUpResult> SetUpAsync(string code, NewMaker maker, IReadOnlyList<PatternDocument> samples, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(code);
        ArgumentNullException.ThrowIfNull(maker);
        ArgumentNullException.ThrowIfNull(samples);
        var first = samples.Select(NewPattern.Of).ToList();
        var settingUp = new SettingUp(_hashing, _time.GetUtcNow(), _random);
        return _store.WriteAsync(context => settingUp.TryAsync(context, code, maker, first, cancellationToken), cancellationToken);
    }

    public Task<Maker?> FindAsync(MakerId id, CancellationToken cancellationToken = default) =>
        _store.ReadAsync(context => context.Makers.Where(row => row.Id == id.Value).Select(AsMaker).SingleOrDefaultAsync(cancellationToken), cancellationToken);

    /// <summary>The maker, or null if there is none with this address or the passphrase is wrong; both take the same time.</summary>
    public async Task<Maker?> SignInAsync(string email, string passphrase, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(email);
        ArgumentNullException.ThrowIfNull(passphrase);
        var key = MakerRules.EmailKey(email);
        var row = await _store.ReadAsync(context => context.Makers.SingleOrDefaultAsync(row => row.EmailKey == key, cancellationToken), cancellationToken);
        // nobody's passphrase is longer; hashing megabytes would only keep the machine busy
        var tried = passphrase.Length <= MakerRules.PassphraseMost ? passphrase : "";
        if (row is null || tried.Length == 0)
        {
            _hashing.VerifyNothing(tried);
            return null;
        }

        if (!_hashing.Verify(tried, row.PassphraseHash))
        {
            return null;
        }

        await StrengthenAsync(row, tried, cancellationToken);
        return AsMakerNow(row);
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
        return await _store.WriteAsync<SetPassphraseResult>(
            async context =>
            {
                if (await context.Makers.SingleOrDefaultAsync(row => row.EmailKey == key, cancellationToken) is not { } row)
                {
                    return new SetPassphraseResult.UnknownMaker();
                }

                if (MakerRules.Passphrase(newPassphrase, row.Email, row.StudioName).ToList() is { Count: > 0 } problems)
                {
                    return new SetPassphraseResult.Refused(problems);
                }

                row.PassphraseHash = _hashing.Hash(newPassphrase, _random);
                row.Stamp = Token.Make(_random, Token.SecretLength);
                return new SetPassphraseResult.Done();
            },
            cancellationToken);
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

    private async Task StrengthenAsync(MakerRow row, string passphrase, CancellationToken cancellationToken)
    {
        if (_hashing.IsWeak(row.PassphraseHash))
        {
            var (old, better) = (row.PassphraseHash, _hashing.Hash(passphrase, _random));
            await _store.WriteAsync(
                context => context.Makers
                    .Where(maker => maker.Id == row.Id && maker.PassphraseHash == old)
                    .ExecuteUpdateAsync(set => set.SetProperty(maker => maker.PassphraseHash, better), cancellationToken),
                cancellationToken);
        }
    }

    private static Maker AsMakerNow(MakerRow row) => new(new MakerId(row.Id), row.StudioName, row.Handle, row.Email, row.TimeZone, row.Stamp);
}
