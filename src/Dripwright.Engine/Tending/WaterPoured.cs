using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Tending;

/// <summary>The water that is poured at a tank, in the grower's own blend, and the mark it is poured to.</summary>
public static class WaterPoured
{
    /// <summary>So much water: a volume, or the parts of the rig's blend.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="volume">[m³] All of it.</param>
    public static Phrase Of(Plan plan, double volume) =>
        plan.Rig.Nutrients.PureShare is > 0 and < 1 and var pure
            ? Phrase.Of(
                "tank.water.blend",
                Measured.Volume(volume),
                Measured.Volume(volume * pure),
                Measured.Volume(volume * (1 - pure))
            )
        : plan.Rig.Nutrients.PureShare >= 1 ? Phrase.Of("tank.water.pure", Measured.Volume(volume))
        : Phrase.Of("tank.water.plain", Measured.Volume(volume));

    /// <summary>How high a volume stands in the tank; nothing where the tank's shape does not tell.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="volume">[m³] What is in the tank then.</param>
    public static IEnumerable<Phrase> Mark(Plan plan, double volume)
    {
        var inside = plan.Layout.Parts.Tank.Inside;
        return volume > 0 && volume <= inside.Capacity
            ? [Phrase.Of("tank.water.mark", Measured.Length(inside.LevelOf(volume)))]
            : [];
    }
}
