using System;
using System.Globalization;
using System.Text;
using InscriptionLab.Cataloguing.Rows;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace InscriptionLab.Cataloguing;

/// <summary>The catalogue's tables for the mapper: the same model for every database.</summary>
internal sealed class CatalogueContext(CatalogueAddress address) : DbContext
{
    public DbSet<ObjectRow> Objects => Set<ObjectRow>();

    public DbSet<PhotoRow> Photos => Set<PhotoRow>();

    public DbSet<ExaminationRow> Examinations => Set<ExaminationRow>();

    public DbSet<LineRow> Lines => Set<LineRow>();

    public DbSet<MarkRow> Marks => Set<MarkRow>();

    public DbSet<MeasurementRow> Measurements => Set<MeasurementRow>();

    public DbSet<CorrectionRow> Corrections => Set<CorrectionRow>();

    public DbSet<ObservationRow> Observations => Set<ObservationRow>();

    public DbSet<PictureRow> Pictures => Set<PictureRow>();

    public DbSet<ChangeRow> Changes => Set<ChangeRow>();

    public DbSet<RefusalRow> Refusals => Set<RefusalRow>();

    protected override void OnConfiguring(DbContextOptionsBuilder optionsBuilder)
    {
        if (address.Kind == StoreKind.Sqlite)
        {
            optionsBuilder.UseSqlite(address.Connection);
        }
        else
        {
            optionsBuilder.UseNpgsql(address.Connection);
        }
    }

    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder) =>
        configurationBuilder.Properties<DateTimeOffset>().HaveConversion<MillisecondsConverter>();

    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        modelBuilder.Entity<ObjectRow>(shown =>
        {
            shown.ToTable("objects");
            shown.HasMany(row => row.Photos).WithOne(row => row.Object).HasForeignKey(row => row.ObjectId);
            shown.HasMany(row => row.Observations).WithOne().HasForeignKey(row => row.ObjectId);
        });
        modelBuilder.Entity<PhotoRow>().ToTable("photos").HasMany(row => row.Examinations).WithOne(row => row.Photo).HasForeignKey(row => row.PhotoId);
        modelBuilder.Entity<ExaminationRow>(examination =>
        {
            examination.ToTable("examinations");
            examination.HasMany(row => row.Lines).WithOne(row => row.Examination).HasForeignKey(row => row.ExaminationId);
            examination.HasMany(row => row.Nearest).WithOne().HasForeignKey(row => row.ExaminationId);
            examination.HasMany(row => row.Measurements).WithOne().HasForeignKey(row => row.ExaminationId);
            examination.HasMany(row => row.Corrections).WithOne().HasForeignKey(row => row.ExaminationId);
            examination.HasMany(row => row.Pictures).WithOne().HasForeignKey(row => row.ExaminationId);
        });
        modelBuilder.Entity<LineRow>().ToTable("lines").HasOne(row => row.Mark).WithOne(row => row.Line).HasForeignKey<MarkRow>(row => row.LineId);
        modelBuilder.Entity<MarkRow>().ToTable("marks");
        modelBuilder.Entity<NearestRow>().ToTable("nearest_forms");
        modelBuilder.Entity<MeasurementRow>().ToTable("measurements");
        modelBuilder.Entity<CorrectionRow>().ToTable("corrections");
        modelBuilder.Entity<ObservationRow>().ToTable("observations");
        modelBuilder.Entity<PictureRow>().ToTable("pictures");
        modelBuilder.Entity<ChangeRow>().ToTable("changes");
        modelBuilder.Entity<RefusalRow>().ToTable("refusals");
        foreach (var entity in modelBuilder.Model.GetEntityTypes())
        {
            foreach (var property in entity.GetProperties())
            {
                property.SetColumnName(Snake(property.Name));
            }
        }
    }

    /// <summary>Writes a property's name as the tables do: <c>ListSha256</c> becomes <c>list_sha256</c>.</summary>
    private static string Snake(string name)
    {
        var snake = new StringBuilder();
        foreach (var letter in name)
        {
            if (char.IsUpper(letter) && snake.Length > 0)
            {
                snake.Append('_');
            }

            snake.Append(char.ToLower(letter, CultureInfo.InvariantCulture));
        }

        return snake.ToString();
    }

    /// <summary>Keeps times as whole milliseconds since 1970, which every database orders alike.</summary>
    private sealed class MillisecondsConverter() : ValueConverter<DateTimeOffset, long>(
        time => time.ToUnixTimeMilliseconds(),
        number => DateTimeOffset.FromUnixTimeMilliseconds(number));
}
