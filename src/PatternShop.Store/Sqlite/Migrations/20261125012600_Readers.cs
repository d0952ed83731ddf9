using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace PatternShop.Store
{
    /// <inheritdoc />
    internal sealed partial class Readers : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "Code",
                table: "Versions",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Kind",
                table: "Versions",
                type: "TEXT",
                nullable: false,
                defaultValue: "Edition");

            migrationBuilder.AddColumn<string>(
                name: "Mends",
                table: "Versions",
                type: "TEXT",
                nullable: false,
                defaultValue: "");

            migrationBuilder.CreateTable(
                name: "Previews",
                columns: table => new
                {
                    PatternId = table.Column<string>(type: "TEXT", nullable: false),
                    SecretHash = table.Column<string>(type: "TEXT", nullable: false),
                    BeganAt = table.Column<DateTime>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Previews", x => x.PatternId);
                    table.ForeignKey(
                        name: "FK_Previews_Patterns_PatternId",
                        column: x => x.PatternId,
                        principalTable: "Patterns",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "Reports",
                columns: table => new
                {
                    Id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    PatternId = table.Column<string>(type: "TEXT", nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    Row = table.Column<int>(type: "INTEGER", nullable: true),
                    Text = table.Column<string>(type: "TEXT", nullable: false),
                    ReplyTo = table.Column<string>(type: "TEXT", nullable: false),
                    SecretHash = table.Column<string>(type: "TEXT", nullable: false),
                    SentAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    Answer = table.Column<string>(type: "TEXT", nullable: true),
                    AnsweredAt = table.Column<DateTime>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Reports", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Reports_Versions_PatternId_Number",
                        columns: x => new { x.PatternId, x.Number },
                        principalTable: "Versions",
                        principalColumns: new[] { "PatternId", "Number" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Versions_Code",
                table: "Versions",
                column: "Code",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Previews_SecretHash",
                table: "Previews",
                column: "SecretHash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Reports_PatternId",
                table: "Reports",
                column: "PatternId");

            migrationBuilder.CreateIndex(
                name: "IX_Reports_PatternId_Number",
                table: "Reports",
                columns: new[] { "PatternId", "Number" });

            migrationBuilder.CreateIndex(
                name: "IX_Reports_SecretHash",
                table: "Reports",
                column: "SecretHash",
                unique: true);

            // "or replace" removes a row with the same code without asking the triggers for deleting
            migrationBuilder.Sql("CREATE TRIGGER Versions_code BEFORE INSERT ON Versions WHEN EXISTS (SELECT 1 FROM Versions WHERE Code = NEW.Code) BEGIN SELECT RAISE(ABORT, 'A version never changes and never vanishes.'); END;");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("DROP TRIGGER Versions_code;");

            migrationBuilder.DropTable(
                name: "Previews");

            migrationBuilder.DropTable(
                name: "Reports");

            migrationBuilder.DropIndex(
                name: "IX_Versions_Code",
                table: "Versions");

            migrationBuilder.DropColumn(
                name: "Code",
                table: "Versions");

            migrationBuilder.DropColumn(
                name: "Kind",
                table: "Versions");

            migrationBuilder.DropColumn(
                name: "Mends",
                table: "Versions");
        }
    }
}
