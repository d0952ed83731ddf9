using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace PatternShop.Store
{
    /// <inheritdoc />
    internal sealed partial class Photos : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "Photos",
                columns: table => new
                {
                    PatternId = table.Column<string>(type: "TEXT", nullable: false),
                    Hash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    Width = table.Column<int>(type: "INTEGER", nullable: false),
                    Height = table.Column<int>(type: "INTEGER", nullable: false),
                    Large = table.Column<byte[]>(type: "BLOB", nullable: false),
                    SmallHash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    SmallWidth = table.Column<int>(type: "INTEGER", nullable: false),
                    SmallHeight = table.Column<int>(type: "INTEGER", nullable: false),
                    Small = table.Column<byte[]>(type: "BLOB", nullable: false),
                    KeptAt = table.Column<DateTime>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Photos", x => new { x.PatternId, x.Hash });
                    table.ForeignKey(
                        name: "FK_Photos_Patterns_PatternId",
                        column: x => x.PatternId,
                        principalTable: "Patterns",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            const string stays = "A photo never changes, and stays once something was issued.";
            Refuse(migrationBuilder, "Photos_update", "UPDATE ON Photos", "1", stays);
            Refuse(migrationBuilder, "Photos_delete", "DELETE ON Photos", "EXISTS (SELECT 1 FROM Versions WHERE PatternId = OLD.PatternId)", stays);

            // "or replace" removes the old row without asking the triggers for deleting; rowid is a key too
            Refuse(migrationBuilder, "Photos_insert", "INSERT ON Photos", "EXISTS (SELECT 1 FROM Photos WHERE (PatternId = NEW.PatternId AND Hash = NEW.Hash) OR rowid = NEW.rowid)", stays);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "Photos");
        }

        private static void Refuse(MigrationBuilder migration, string name, string act, string when, string message) =>
            migration.Sql($"CREATE TRIGGER {name} BEFORE {act} WHEN {when} BEGIN SELECT RAISE(ABORT, '{message}'); END;");
    }
}
