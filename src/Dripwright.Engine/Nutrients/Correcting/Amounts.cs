namespace Dripwright.Engine.Nutrients.Correcting;

/// <summary>How much to drain, fill in and add, by C1 V1 with all volumes counted. Units are those of the strengthener.</summary>
internal readonly record struct Amounts(double Drained, double Water, double Units)
{
    /// <summary>The least draining and the fewest additions that reach the target within the tank.</summary>
    /// <remarks>Water that nobody can measure out at a tank is neither added nor drained.</remarks>
    public static Amounts For(TankReading reading, TankTarget target, Strengthener giver, double water, double capacity)
    {
        var volume = reading.Volume;
        var ec = reading.DecisiemensPerMetre;
        var want = target.DecisiemensPerMetre;
        var full = target.Volume is { } wished && wished - volume >= TankCorrection.LeastWater ? wished : volume;
        if (Math.Abs(ec - want) < TankCorrection.SmallestStep && full == volume)
        {
            return default;
        }

        // Filled up to the wanted volume with water and what strengthens it.
        var added = full - volume;
        var need = ((full * want) - (volume * ec) - (added * water)) / (giver.Strength - (giver.Bulk * water));
        var taken = need * giver.Bulk;
        if (need >= 0 && taken <= added)
        {
            return new Amounts(0, Told(added - taken), need);
        }

        return need > 0 ? Strengthen(volume, ec, want, giver, capacity) : Thin(volume, ec, want, water, capacity);
    }

    private static Amounts Strengthen(double volume, double ec, double want, Strengthener giver, double capacity)
    {
        var need = volume * (want - ec) / (giver.Strength - (giver.Bulk * want));
        if (volume + (need * giver.Bulk) < capacity + TankCorrection.LeastWater)
        {
            return new Amounts(0, 0, need);
        }

        var squeezed = capacity * (want - ec) / (giver.Strength - (giver.Bulk * ec));
        return new Amounts(volume + (squeezed * giver.Bulk) - capacity, 0, squeezed);
    }

    private static Amounts Thin(double volume, double ec, double want, double water, double capacity)
    {
        var need = volume * (ec - want) / (want - water);
        if (volume + need < capacity + TankCorrection.LeastWater)
        {
            return new Amounts(0, Told(need), 0);
        }

        var squeezed = capacity * (ec - want) / (ec - water);
        return new Amounts(volume + squeezed - capacity, squeezed, 0);
    }

    private static double Told(double water) => water < TankCorrection.LeastWater ? 0 : water;
}
