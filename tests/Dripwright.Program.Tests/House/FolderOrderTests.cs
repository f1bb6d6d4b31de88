using Dripwright.Engine.Tests.House;

namespace Dripwright.Program.Tests.House;

/// <summary>The order of the folders of everything above the engine, which no compiler holds; the engine's own is tested with it.</summary>
public sealed class FolderOrderTests
{
    // The lowest first; what lies in no folder stands where Root is.
    public static TheoryData<string, string, string[]> Folders =>
        new()
        {
            { "Dripwright.Language.dll", "Dripwright.Language", [RoomArrows.Root, "Report"] },
            {
                "Dripwright.Sheets.dll",
                "Dripwright.Sheets",
                [
                    "Lists",
                    "Model",
                    "Drawing",
                    "Writing",
                    "Plots",
                    "Views",
                    "Nutrients",
                    "Bench",
                    "Screen",
                    RoomArrows.Root,
                ]
            },
            { "Dripwright.Solids.dll", "Dripwright.Solids", [RoomArrows.Root, "Pictures", "Files"] },
            { "Dripwright.Store.dll", "Dripwright.Store", ["Ground", "Tables", "Backups", RoomArrows.Root, "Keeping"] },
            {
                "Dripwright.Workbench.dll",
                "Dripwright.Workbench",
                [
                    "Failing",
                    "Household",
                    "Round",
                    "Setup",
                    "Encryption",
                    "Hosting",
                    "Files",
                    "Methods",
                    "SignIn",
                    "Work",
                    "Editing",
                    "Shared",
                    "Http",
                    "Inputs",
                    "Nutrients",
                    "Pack",
                    "Revisions",
                    "Gardens",
                    "Printed",
                    "Proposing",
                    "Rigs",
                    RoomArrows.Root,
                ]
            },
            { "dripwright.dll", "Dripwright", ["Terminal", "Files", "Screen", "Commands", RoomArrows.Root] },
        };

    [Theory]
    [MemberData(nameof(Folders))]
    public void A_folder_uses_only_folders_below_it_so_that_no_circle_closes(string file, string root, string[] order)
    {
        var arrows = RoomArrows.Of(Path.Combine(AppContext.BaseDirectory, file), root);
        Assert.Equal(order.Order(), arrows.Keys.SelectMany(arrow => new[] { arrow.From, arrow.To }).Distinct().Order());
        Assert.Equal(
            [],
            arrows
                .Where(arrow => Array.IndexOf(order, arrow.Key.To) > Array.IndexOf(order, arrow.Key.From))
                .Select(arrow => $"{arrow.Key.From} -> {arrow.Key.To} ({arrow.Value})")
        );
    }

    /// <summary>Two types of one name are two things a reader has to tell apart by their folders.</summary>
    [Fact]
    public void No_name_of_a_type_lives_in_two_folders()
    {
        string[] files =
        [
            "Dripwright.Engine.dll",
            "Dripwright.Language.dll",
            "Dripwright.Sheets.dll",
            "Dripwright.Solids.dll",
            "Dripwright.Pack.dll",
            "Dripwright.Store.dll",
            "Dripwright.Workbench.dll",
            "dripwright.dll",
        ];
        Assert.Equal(
            [],
            files
                .SelectMany(file => RoomArrows.NamesIn(Path.Combine(AppContext.BaseDirectory, file)))
                // Written by a tool, once for each kind of database.
                .Where(name => !name.StartsWith("Dripwright.Store.Migrations.", StringComparison.Ordinal))
                .GroupBy(name => name[(name.LastIndexOf('.') + 1)..], StringComparer.Ordinal)
                .Select(same => same.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList())
                .Where(same => same.Count > 1)
                .Select(same => string.Join(", ", same))
        );
    }
}
