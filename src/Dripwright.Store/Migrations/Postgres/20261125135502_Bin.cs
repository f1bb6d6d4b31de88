using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Dripwright.Store.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class Bin : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<DateTime>(
                name: "RemovedAt",
                table: "documents",
                type: "timestamp with time zone",
                nullable: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "RemovedAt",
                table: "documents");
        }
    }
}
