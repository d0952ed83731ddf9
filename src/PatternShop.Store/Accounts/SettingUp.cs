using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;

namespace PatternShop.Store;

/// <summary>Makes the first maker, inside one transaction.</summary>
internal sealed class SettingUp(string passphraseHash, DateTimeOffset now, RandomNumberGenerator random)
{
    /// <summary>Why the maker cannot be made; null when they can.</summary>
    public static async Task<SetUpResult?> FindObstacleAsync(StoreContext context, string code, NewMaker maker, CancellationToken cancellationToken)
    {
        if (await context.Makers.AnyAsync(cancellationToken))
        {
            return new SetUpResult.AlreadySetUp();
        }

        if (!await SetUpCode.MatchesAsync(context, code, cancellationToken))
        {
            return new SetUpResult.WrongCode();
        }

        return MakerRules.Check(maker) is { Count: > 0 } problems ? new SetUpResult.Refused(problems) : null;
    }

    public async Task<SetUpResult> TryAsync(StoreContext context, string code, NewMaker maker, List<NewPattern> first, CancellationToken cancellationToken)
    {
        // asked again: somebody else may have been faster
        if (await FindObstacleAsync(context, code, maker, cancellationToken) is { } obstacle)
        {
            return obstacle;
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
        PassphraseHash = passphraseHash,
        Stamp = Token.Make(random, Token.SecretLength),
        TimeZone = maker.TimeZone,
        MadeAt = now,
    };
}
