using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Dripwright.Store.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class Checksums : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<long>(
                name: "Edits",
                table: "gardens",
                type: "bigint",
                nullable: false,
                defaultValue: 0L);

            migrationBuilder.CreateTable(
                name: "checksums",
                columns: table => new
                {
                    Id = table.Column<int>(type: "integer", nullable: false),
                    Sha256 = table.Column<string>(type: "text", nullable: false),
                    MadeAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_checksums", x => x.Id);
                });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "checksums");

            migrationBuilder.DropColumn(
                name: "Edits",
                table: "gardens");
        }
    }
}
