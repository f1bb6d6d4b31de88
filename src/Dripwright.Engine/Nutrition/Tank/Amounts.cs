namespace Dripwright.Engine.Nutrition.Tank;

/// <summary>How much to drain, fill in and add, by C1 V1 with all volumes counted. Stock is A and B together.</summary>
internal readonly record struct Amounts(double Drained, double Water, double Stock)
{
    /// <summary>The least draining and the fewest additions that reach the target within the tank.</summary>
    public static Amounts For(TankReading reading, TankTarget target, double stock, double water, double capacity)
    {
        double volume = reading.Volume;
        double ec = reading.DecisiemensPerMetre;
        double want = target.DecisiemensPerMetre;
        double full = Math.Max(target.Volume ?? volume, volume);
        if (Math.Abs(ec - want) < TankCorrection.SmallestStep && full == volume)
        {
            return default;
        }

        // Filled up to the wanted volume with water and stock.
        double added = full - volume;
        double need = ((full * want) - (volume * ec) - (added * water)) / (stock - water);
        if (need >= 0 && need <= added)
        {
            return new Amounts(0, added - need, need);
        }

        return need > added ? Strengthen(volume, ec, want, stock, capacity) : Thin(volume, ec, want, water, capacity);
    }

    private static Amounts Strengthen(double volume, double ec, double want, double stock, double capacity)
    {
        double need = volume * (want - ec) / (stock - want);
        if (volume + need <= capacity)
        {
            return new Amounts(0, 0, need);
        }

        double squeezed = capacity * (want - ec) / (stock - ec);
        return new Amounts(volume + squeezed - capacity, 0, squeezed);
    }

    private static Amounts Thin(double volume, double ec, double want, double water, double capacity)
    {
        double need = volume * (ec - want) / (want - water);
        if (volume + need <= capacity)
        {
            return new Amounts(0, need, 0);
        }

        double squeezed = capacity * (ec - want) / (ec - water);
        return new Amounts(volume + squeezed - capacity, squeezed, 0);
    }
}
