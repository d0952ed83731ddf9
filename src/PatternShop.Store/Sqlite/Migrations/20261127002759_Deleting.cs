using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace PatternShop.Store
{
    /// <inheritdoc />
    internal sealed partial class Deleting : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<DateTime>(
                name: "DeletedAt",
                table: "Patterns",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "Format",
                table: "Patterns",
                type: "INTEGER",
                nullable: false,
                defaultValue: 0);

            Refuse(migrationBuilder, "Patterns_deleted", "UPDATE ON Patterns", "NEW.DeletedAt IS NOT NULL AND EXISTS (SELECT 1 FROM Versions WHERE PatternId = NEW.Id)", "What was issued stays: its pattern is not deleted.");
            Refuse(migrationBuilder, "Versions_deleted", "INSERT ON Versions", "EXISTS (SELECT 1 FROM Patterns WHERE Id = NEW.PatternId AND DeletedAt IS NOT NULL)", "What is issued stays: a pattern that was deleted is not issued.");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("DROP TRIGGER Patterns_deleted;");
            migrationBuilder.Sql("DROP TRIGGER Versions_deleted;");

            migrationBuilder.DropColumn(
                name: "DeletedAt",
                table: "Patterns");

            migrationBuilder.DropColumn(
                name: "Format",
                table: "Patterns");
        }

        private static void Refuse(MigrationBuilder migration, string name, string act, string when, string message) =>
            migration.Sql($"CREATE TRIGGER {name} BEFORE {act} WHEN {when} BEGIN SELECT RAISE(ABORT, '{message}'); END;");
    }
}
