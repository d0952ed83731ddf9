using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace PatternShop.Store.Tests;

/// <summary>The same, tried through the model.</summary>
public sealed class SaveChangesGuardTests
{
    public static TheoryData<Type> IssuedRows => [.. typeof(IIssuedRow).Assembly.GetTypes().Where(type => type.IsClass && typeof(IIssuedRow).IsAssignableFrom(type))];

    [Theory]
    [MemberData(nameof(IssuedRows))]
    public async Task Saving_a_changed_or_removed_row_is_refused(Type row)
    {
        await using var store = await ImmutabilityTests.IssuedStoreAsync();
        using var raw = store.Raw();
        var before = raw.Dump();
        foreach (var state in new[] { EntityState.Modified, EntityState.Deleted })
        {
            await using var context = store.File.Context();
            var entity = Assert.Single(await LoadAsync(context, row, 1));
            context.Entry(entity).State = state;
            Assert.Contains(row.Name, (await Assert.ThrowsAsync<InvalidOperationException>(() => context.SaveChangesAsync())).Message, StringComparison.Ordinal);
            Assert.Contains(row.Name, Assert.Throws<InvalidOperationException>(() => context.SaveChanges()).Message, StringComparison.Ordinal);
        }

        Assert.Equal(before, raw.Dump());
    }

    [Fact]
    public async Task Updates_and_deletes_past_the_change_tracker_meet_the_triggers()
    {
        await using var store = await ImmutabilityTests.IssuedStoreAsync();
        await using var context = store.File.Context();
        await Assert.ThrowsAsync<SqliteException>(() => context.Versions.ExecuteDeleteAsync());
        await Assert.ThrowsAsync<SqliteException>(() => context.VersionFiles.ExecuteDeleteAsync());
        await Assert.ThrowsAsync<SqliteException>(() => context.Files.ExecuteDeleteAsync());
        await Assert.ThrowsAsync<SqliteException>(() => context.Versions.ExecuteUpdateAsync(set => set.SetProperty(version => version.Note, "Other")));
        await Assert.ThrowsAsync<SqliteException>(() => context.Patterns.Where(pattern => context.Versions.Any(version => version.PatternId == pattern.Id)).ExecuteDeleteAsync());
    }

    [Fact]
    public async Task A_pattern_cannot_change_hands()
    {
        await using var store = await ImmutabilityTests.IssuedStoreAsync();
        await using var context = store.File.Context();
        var pattern = await context.Patterns.FirstAsync();
        context.Entry(pattern).Property(row => row.MakerId).CurrentValue++;
        await Assert.ThrowsAsync<InvalidOperationException>(() => context.SaveChangesAsync());
    }

    private static async Task<List<object>> LoadAsync(StoreContext context, Type row, int most) => row.Name switch
    {
        nameof(VersionRow) => [.. await context.Versions.OrderBy(version => version.Number).Take(most).ToListAsync()],
        nameof(VersionFileRow) => [.. await context.VersionFiles.OrderBy(file => file.Place).Take(most).ToListAsync()],
        nameof(FileRow) => [.. await context.Files.OrderBy(file => file.Hash).Take(most).ToListAsync()],
        _ => throw new InvalidOperationException($"{row.Name} is not loaded by this test."),
    };
}
