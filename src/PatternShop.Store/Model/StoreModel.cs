using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace PatternShop.Store;

/// <summary>Keys, lengths and references of the tables.</summary>
internal static class StoreModel
{
    private const int HashLength = 64;
    private static readonly Type[] GoWithPattern = [typeof(StepRow), typeof(CarriedOutRow), typeof(PreviewRow), typeof(PhotoRow)];

    public static void Build(ModelBuilder model)
    {
        Makers(model);
        Patterns(model);
        History(model);
        Photos(model);
        Versions(model);
        Readers(model);
        foreach (var reference in model.Model.GetEntityTypes().SelectMany(type => type.GetForeignKeys()))
        {
            reference.DeleteBehavior = GoWithPattern.Contains(reference.DeclaringEntityType.ClrType) ? DeleteBehavior.Cascade : DeleteBehavior.Restrict;
        }
    }

    private static void Makers(ModelBuilder model)
    {
        model.Entity<MakerRow>(maker =>
        {
            maker.ToTable("Makers");
            maker.Property(row => row.Id).ValueGeneratedOnAdd();
            maker.HasIndex(row => row.Handle).IsUnique();
            maker.HasIndex(row => row.EmailKey).IsUnique();
        });
        model.Entity<SettingRow>(setting =>
        {
            setting.ToTable("Settings");
            setting.HasKey(row => row.Name);
        });
    }

    private static void Patterns(ModelBuilder model) => model.Entity<PatternRow>(pattern =>
    {
        pattern.ToTable("Patterns");
        pattern.Property(row => row.Id).HasMaxLength(Token.PatternIdLength);
        pattern.Property(row => row.MakerId).Metadata.SetAfterSaveBehavior(PropertySaveBehavior.Throw);
        pattern.Property(row => row.Hash).HasMaxLength(HashLength);
        pattern.Property(row => row.Revision).IsConcurrencyToken();
        pattern.Property(row => row.Format).HasDefaultValue(0);
        pattern.HasQueryFilter(row => row.DeletedAt == null);
        pattern.HasOne<MakerRow>().WithMany().HasForeignKey(row => row.MakerId);
    });

    private static void History(ModelBuilder model)
    {
        model.Entity<StepRow>(step =>
        {
            step.ToTable("Steps");
            step.HasKey(row => new { row.PatternId, row.Position });
            step.HasOne<PatternRow>().WithMany().HasForeignKey(row => row.PatternId);
        });
        model.Entity<CarriedOutRow>(carriedOut =>
        {
            carriedOut.ToTable("CarriedOut");
            carriedOut.HasKey(row => new { row.PatternId, row.Client, row.Sequence });
            carriedOut.HasOne<PatternRow>().WithMany().HasForeignKey(row => row.PatternId);
        });
    }

    private static void Photos(ModelBuilder model) => model.Entity<PhotoRow>(photo =>
    {
        photo.ToTable("Photos");
        photo.HasKey(row => new { row.PatternId, row.Hash });
        photo.Property(row => row.Hash).HasMaxLength(HashLength);
        photo.Property(row => row.SmallHash).HasMaxLength(HashLength);
        photo.HasOne<PatternRow>().WithMany().HasForeignKey(row => row.PatternId);
    });

    private static void Versions(ModelBuilder model)
    {
        model.Entity<VersionRow>(version =>
        {
            version.ToTable("Versions");
            version.HasKey(row => new { row.PatternId, row.Number });
            version.Property(row => row.Hash).HasMaxLength(HashLength);
            version.Property(row => row.Kind).HasConversion<string>().HasDefaultValue(VersionKind.Edition).HasSentinel(VersionKind.Edition);
            version.Property(row => row.Mends).HasDefaultValue("");
            version.HasIndex(row => row.Code).IsUnique();
            version.HasOne<PatternRow>().WithMany().HasForeignKey(row => row.PatternId);
        });
        model.Entity<VersionFileRow>(file =>
        {
            file.ToTable("VersionFiles");
            file.HasKey(row => new { row.PatternId, row.Number, row.Edition });
            file.HasOne<VersionRow>().WithMany().HasForeignKey(row => new { row.PatternId, row.Number });
            file.HasOne<FileRow>().WithMany().HasForeignKey(row => row.Hash);
        });
        model.Entity<FileRow>(file =>
        {
            file.ToTable("Files");
            file.HasKey(row => row.Hash);
            file.Property(row => row.Hash).HasMaxLength(HashLength);
        });
    }

    private static void Readers(ModelBuilder model)
    {
        model.Entity<PreviewRow>(preview =>
        {
            preview.ToTable("Previews");
            preview.HasKey(row => row.PatternId);
            preview.HasIndex(row => row.SecretHash).IsUnique();
            preview.HasOne<PatternRow>().WithMany().HasForeignKey(row => row.PatternId);
        });
        model.Entity<ReportRow>(report =>
        {
            report.ToTable("Reports");
            report.Property(row => row.Id).ValueGeneratedOnAdd();
            report.HasIndex(row => row.SecretHash).IsUnique();
            report.HasIndex(row => row.PatternId);
            report.HasOne<VersionRow>().WithMany().HasForeignKey(row => new { row.PatternId, row.Number });
        });
    }
}
