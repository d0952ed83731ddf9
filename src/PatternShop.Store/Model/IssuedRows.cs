using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;

namespace PatternShop.Store;

/// <summary>Keeps changes to versions and their files from being saved. The database refuses them too; this says it first and in words.</summary>
internal static class IssuedRows
{
    public static void Refuse(ChangeTracker changes)
    {
        var touched = changes.Entries<IIssuedRow>().FirstOrDefault(entry => entry.State is EntityState.Modified or EntityState.Deleted);
        if (touched is not null)
        {
            throw new InvalidOperationException($"A {touched.Metadata.ClrType.Name} was to be {touched.State}. What was issued stays as it is.");
        }
    }
}
