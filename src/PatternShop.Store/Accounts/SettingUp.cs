using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;

namespace PatternShop.Store;

/// <summary>Makes the first maker, inside one transaction.</summary>
internal sealed class SettingUp(PassphraseHashing hashing, DateTimeOffset now, RandomNumberGenerator random)
{
    public async Task<SetUpResult> TryAsync(StoreContext context, string code, NewMaker maker, List<NewPattern> first, CancellationToken cancellationToken)
    {
        if (await context.Makers.AnyAsync(cancellationToken))
        {
            return new SetUpResult.AlreadySetUp();
        }

        if (!await SetUpCode.MatchesAsync(context, code, cancellationToken))
        {
            return new SetUpResult.WrongCode();
        }

        if (MakerRules.Check(maker) is { Count: > 0 } problems)
        {
            return new SetUpResult.Refused(problems);
        }

        await Settings.SetAsync(context, Settings.SetUpCode, null, cancellationToken);
        var row = NewRow(maker);
        context.Makers.Add(row);
        await context.SaveChangesAsync(cancellationToken);
        foreach (var pattern in first)
        {
            await pattern.AddAsync(context, new MakerId(row.Id), now, random, cancellationToken);
        }

        return new SetUpResult.Done(new MakerId(row.Id));
    }

    private MakerRow NewRow(NewMaker maker) => new()
    {
        StudioName = maker.StudioName.Trim(),
        Handle = maker.Handle,
        Email = maker.Email.Trim(),
        EmailKey = MakerRules.EmailKey(maker.Email),
        PassphraseHash = hashing.Hash(maker.Passphrase, random),
        Stamp = Token.Make(random, Token.SecretLength),
        TimeZone = maker.TimeZone,
        MadeAt = now,
    };
}
