using Dripwright.Store.Ground;
using Dripwright.Store.Tables;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

namespace Dripwright.Store.Tests;

/// <summary>A garden as the first version of the tables kept it, written without any code of today's store.</summary>
internal static class OldGarden
{
    private const string Date = "'2026-01-02 03:04:05'";

    public static async Task Make(GardenPlace place, CancellationToken stop)
    {
        await using (var tables = new Connection(place).Open())
        {
            await tables.GetService<IMigrator>().MigrateAsync("First", stop);
        }

        foreach (
            var sql in new[]
            {
                $"INSERT INTO gardens VALUES (1, '{{\"name\":\"Old yard\"}}', {Date})",
                Document(1, "catalogue", "Own catalogue", "{}"),
                Document(2, "on-hand", "Parts on hand", "[]"),
                Document(3, "rig", "Old bench", "{ \"name\": \"two\" }"),
                $"INSERT INTO revisions (\"DocumentId\", \"Number\", \"At\", \"Who\", \"Note\", \"Text\") VALUES (3, 1, {Date}, 'Jo', '', '{{}}')",
            }
        )
        {
            await Run(place, sql, stop);
        }
    }

    public static async Task IsThere(Garden garden, CancellationToken stop)
    {
        Assert.Equal("Old yard", (await garden.SettingsAsync(stop)).Name);
        var rig = Assert.Single(await garden.RigsAsync(stop));
        Assert.Equal(("Old bench", 1, null), (rig.Name, rig.Revisions, rig.RemovedAt));
        Assert.Equal("{ \"name\": \"two\" }", (await garden.DraftAsync(rig.Id, stop))!.Text);
        Assert.Equal("Jo", (await garden.RevisionAsync(rig.Id, 1, stop))!.Who);
    }

    public static async Task Run(GardenPlace place, string sql, CancellationToken stop)
    {
        await using var tables = new Connection(place).Open();
        // Braces are holes to the library.
        await tables.Database.ExecuteSqlRawAsync(
            sql.Replace("{", "{{", StringComparison.Ordinal).Replace("}", "}}", StringComparison.Ordinal),
            stop
        );
    }

    private static string Document(int id, string kind, string name, string text) =>
        FormattableString.Invariant(
            $"""
            INSERT INTO documents ("Id", "Kind", "Name", "Text", "Version", "Step", "MadeAt", "ChangedAt")
            VALUES ({id}, '{kind}', '{name}', '{text}', 1, 1, {Date}, {Date});
            INSERT INTO steps ("DocumentId", "Number", "Before", "After", "Text", "What", "At")
            VALUES ({id}, 1, 0, 0, '{text}', 'new', {Date})
            """
        );
}
