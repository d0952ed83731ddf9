using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace PatternShop.Store;

/// <summary>For the migration tool only.</summary>
internal sealed class SqliteDesign : IDesignTimeDbContextFactory<SqliteStoreContext>
{
    public SqliteStoreContext CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<SqliteStoreContext>().UseSqlite("Data Source=:memory:").Options);
}
