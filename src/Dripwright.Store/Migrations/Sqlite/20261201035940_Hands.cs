using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Dripwright.Store.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class Hands : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "Who",
                table: "steps",
                type: "TEXT",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<string>(
                name: "ChangedBy",
                table: "documents",
                type: "TEXT",
                nullable: false,
                defaultValue: "");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "Who",
                table: "steps");

            migrationBuilder.DropColumn(
                name: "ChangedBy",
                table: "documents");
        }
    }
}
