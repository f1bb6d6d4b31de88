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
}
