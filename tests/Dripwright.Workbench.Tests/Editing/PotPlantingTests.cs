using System.Text.Json.Nodes;
using CsCheck;
using Dripwright.Workbench.Editing;

namespace Dripwright.Workbench.Tests.Editing;

public sealed class PotPlantingTests
{
    private static readonly Gen<PotPlanting?> s_pot = Gen.OneOf(
        Gen.Const((PotPlanting?)null),
        Gen.Select(
                Pick.From("tomato", "basil", ""),
                Pick.From<int?>(null, 1, 2, 3),
                Pick.From<int?>(null, 2),
                Pick.From<string?>(null, "50 %")
            )
            .Select((crop, plants, emitters, open) => (PotPlanting?)new PotPlanting(crop, plants, emitters, open))
    );

    [Fact]
    public void What_is_written_of_the_pots_is_read_back() =>
        s_pot
            .Array[1, 30]
            .Holds(each =>
                Assert.Equal(
                    each,
                    PotPlanting.Of(new JsonObject { ["planting"] = PotPlanting.Write(each) }, each.Length)
                )
            );

    [Fact]
    public void A_row_that_does_not_say_has_every_pot_planted() =>
        Assert.All(
            PotPlanting.Of(new JsonObject(), 4),
            pot => Assert.Equal(new PotPlanting("", null, null, null), pot)
        );
}
