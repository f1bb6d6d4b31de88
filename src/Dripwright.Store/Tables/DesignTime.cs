using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace Dripwright.Store.Tables;

// Only dotnet-ef uses these, to write migrations. It opens no database for that.

internal sealed class SqliteDesign : IDesignTimeDbContextFactory<SqliteTables>
{
    public SqliteTables CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<SqliteTables>().UseSqlite("Data Source=:memory:").Options);
}

internal sealed class PostgresDesign : IDesignTimeDbContextFactory<PostgresTables>
{
    public PostgresTables CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<PostgresTables>().UseNpgsql("Host=localhost;Database=garden").Options);
}
