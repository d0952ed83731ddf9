using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace PatternShop.Store;

/// <summary>The one model, whatever the database.</summary>
internal abstract class StoreContext(DbContextOptions options) : DbContext(options)
{
    public DbSet<MakerRow> Makers => Set<MakerRow>();

    public DbSet<SettingRow> Settings => Set<SettingRow>();

    public DbSet<PatternRow> Patterns => Set<PatternRow>();

    public DbSet<StepRow> Steps => Set<StepRow>();

    public DbSet<CarriedOutRow> CarriedOut => Set<CarriedOutRow>();

    public DbSet<PhotoRow> Photos => Set<PhotoRow>();

    public DbSet<VersionRow> Versions => Set<VersionRow>();

    public DbSet<VersionFileRow> VersionFiles => Set<VersionFileRow>();

    public DbSet<FileRow> Files => Set<FileRow>();

    public DbSet<PreviewRow> Previews => Set<PreviewRow>();

    public DbSet<ReportRow> Reports => Set<ReportRow>();

    /// <summary>Until it is disposed, all reads see the same state of the database. Does not keep writers out.</summary>
    public abstract Task<IAsyncDisposable> BeginReadAsync(CancellationToken cancellationToken);

    public override int SaveChanges(bool acceptAllChangesOnSuccess)
    {
        IssuedRows.Refuse(ChangeTracker);
        return base.SaveChanges(acceptAllChangesOnSuccess);
    }

    public override Task<int> SaveChangesAsync(bool acceptAllChangesOnSuccess, CancellationToken cancellationToken = default)
    {
        IssuedRows.Refuse(ChangeTracker);
        return base.SaveChangesAsync(acceptAllChangesOnSuccess, cancellationToken);
    }

    // times are kept as UTC: SQLite cannot order or compare times with an offset
    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder) =>
        configurationBuilder.Properties<DateTimeOffset>().HaveConversion<UtcConverter>();

    protected override void OnModelCreating(ModelBuilder modelBuilder) => StoreModel.Build(modelBuilder);

    private sealed class UtcConverter() : ValueConverter<DateTimeOffset, DateTime>(
        time => time.UtcDateTime,
        time => new DateTimeOffset(DateTime.SpecifyKind(time, DateTimeKind.Utc)));
}
