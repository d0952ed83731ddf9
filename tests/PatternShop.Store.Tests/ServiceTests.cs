using Microsoft.Extensions.DependencyInjection;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Store.Tests;

/// <summary>The store as a program puts it together.</summary>
public sealed class ServiceTests
{
    [Fact]
    public async Task A_program_finds_all_faces_and_its_own_clock()
    {
        var folder = Directory.CreateTempSubdirectory("store");
        try
        {
            var clock = new SetTime();
            await using (var services = new ServiceCollection().AddSingleton<TimeProvider>(clock).AddPatternStore(Path.Combine(folder.FullName, "data")).BuildServiceProvider())
            {
                await services.GetRequiredService<StoreStart>().OpenAsync();
                var makers = services.GetRequiredService<Makers>();
                var done = Assert.IsType<SetUpResult.Done>(await makers.SetUpAsync((await makers.SetUpCodeAsync())!, MakerTests.Anna, [Charts.Document("x.")]));
                var card = Assert.Single(await services.GetRequiredService<Workroom>().ListAsync(done.Maker));
                Assert.Equal(clock.Now, card.ChangedAt);
                Assert.Empty(await services.GetRequiredService<PublicShelf>().ListAsync());
                Assert.IsType<SignInResult.Done>(await makers.SignInAsync(MakerTests.Anna.Email, MakerTests.Anna.Passphrase, HashingLane.Strangers));
                Assert.Same(makers, services.GetRequiredService<Makers>());
            }

            Assert.Equal(["opening.lock", "patternshop.db"], Directory.GetFiles(Path.Combine(folder.FullName, "data")).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public void Nothing_of_the_database_library_shows() =>
        Assert.DoesNotContain(
            typeof(Workroom).Assembly.GetExportedTypes(),
            type => new[] { type.BaseType }.Concat(type.GetInterfaces()).Any(other => other?.Assembly.GetName().Name!.StartsWith("Microsoft.EntityFrameworkCore", StringComparison.Ordinal) == true));
}
