using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace Dripwright.Store.Tables;

/// <summary>The tables of a garden; the same on both kinds of database.</summary>
internal abstract class GardenTables(DbContextOptions options) : DbContext(options)
{
    public DbSet<GardenRow> Gardens => Set<GardenRow>();

    public DbSet<DocumentRow> Documents => Set<DocumentRow>();

    public DbSet<StepRow> Steps => Set<StepRow>();

    public DbSet<RevisionRow> Revisions => Set<RevisionRow>();

    public DbSet<ChecksumRow> Checksums => Set<ChecksumRow>();

    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder) =>
        // SQLite gives dates back without saying that they are UTC.
        configurationBuilder.Properties<DateTime>().HaveConversion<Utc>();

    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        modelBuilder.Entity<GardenRow>(garden =>
        {
            garden.ToTable("gardens");
            garden.Property(row => row.Id).ValueGeneratedNever();
        });
        modelBuilder.Entity<DocumentRow>(document =>
        {
            document.ToTable("documents");
            document.HasIndex(row => row.Kind);
            document.Property(row => row.ChangedBy).HasDefaultValue("");
        });
        modelBuilder.Entity<StepRow>(step =>
        {
            step.ToTable("steps");
            step.HasKey(row => new { row.DocumentId, row.Number });
            step.Property(row => row.Who).HasDefaultValue("");
            step.HasOne<DocumentRow>().WithMany().HasForeignKey(row => row.DocumentId);
        });
        modelBuilder.Entity<RevisionRow>(revision =>
        {
            revision.ToTable("revisions");
            revision.HasKey(row => new { row.DocumentId, row.Number });
            revision.HasOne<DocumentRow>().WithMany().HasForeignKey(row => row.DocumentId);
        });
        modelBuilder.Entity<ChecksumRow>(checksum =>
        {
            checksum.ToTable("checksums");
            checksum.Property(row => row.Id).ValueGeneratedNever();
        });
    }

    private sealed class Utc()
        : ValueConverter<DateTime, DateTime>(kept => kept, read => DateTime.SpecifyKind(read, DateTimeKind.Utc));
}

/// <summary>A garden in a SQLite file.</summary>
internal sealed class SqliteTables(DbContextOptions<SqliteTables> options) : GardenTables(options);

/// <summary>A garden on a PostgreSQL server.</summary>
internal sealed class PostgresTables(DbContextOptions<PostgresTables> options) : GardenTables(options);
