namespace Dripwright.Engine.Tests.House;

/// <summary>The order of the engine's rooms, which no compiler holds.</summary>
public sealed class RoomOrderTests
{
    // The lowest first, as docs/decisions/0001-structure.md gives them and why.
    private static readonly string[] s_rooms =
    [
        "Numerics",
        "Physics",
        "Units",
        "Phrases",
        "Findings",
        "Files",
        "Chemistry",
        "Catalogue",
        "Rigs",
        "Layout",
        "Water",
        "Stands",
        "Wires",
        "Printed",
        "Nutrients",
        "Parts",
        RoomArrows.Root,
        "Scenes",
        "Proposing",
        "Curing",
        "Extending",
        "Tending",
    ];

    private static readonly IReadOnlyDictionary<(string From, string To), int> s_arrows = RoomArrows.Of(
        typeof(Planner).Assembly.Location,
        "Dripwright.Engine"
    );

    [Fact]
    public void Every_room_has_its_place_in_the_order() =>
        Assert.Equal(
            s_rooms.Order(),
            s_arrows.Keys.SelectMany(arrow => new[] { arrow.From, arrow.To }).Distinct().Order()
        );

    [Fact]
    public void A_room_uses_only_rooms_below_it_so_that_no_circle_closes()
    {
        var upward = s_arrows
            .Where(arrow => Array.IndexOf(s_rooms, arrow.Key.To) > Array.IndexOf(s_rooms, arrow.Key.From))
            .Select(arrow => $"{arrow.Key.From} -> {arrow.Key.To} ({arrow.Value})");
        Assert.Equal([], upward);
    }

    [Fact]
    public void An_arrow_that_is_there_is_seen()
    {
        Assert.True(s_arrows[("Rigs", "Files")] > 0, "by an attribute");
        Assert.True(s_arrows[("Layout", "Rigs")] > 0, "by a member");
        Assert.True(s_arrows[("Water", "Numerics")] > 0, "by code");
    }

    [Fact]
    public void The_picture_of_the_rooms_is_drawn_where_it_is_asked_for()
    {
        Assert.SkipUnless(
            Environment.GetEnvironmentVariable("DRIPWRIGHT_PICTURES") is "1",
            "Drawn where DRIPWRIGHT_PICTURES=1 asks for it."
        );
        File.WriteAllText(
            Path.Combine(CommittedText.Root, "docs/pictures/rooms.svg"),
            RoomPicture.Of("The engine's rooms", s_rooms, s_arrows)
        );
    }
}
