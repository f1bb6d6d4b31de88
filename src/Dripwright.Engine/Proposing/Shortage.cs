namespace Dripwright.Engine.Proposing;

/// <summary>By how little the frames that do not fit fail to fit, so that an impossible brief can say what would help.</summary>
internal sealed class Shortage
{
    /// <summary>[m] Least length missing along the rows; null where no frame failed by it.</summary>
    public double? Along { get; private set; }

    /// <summary>[m] Least width missing across the rows.</summary>
    public double? Across { get; private set; }

    /// <summary>[m] Least height by which the drain misses the tank's rim with the highest stand.</summary>
    public double? Fall { get; private set; }

    /// <summary>[d] Least number of days by which a reservoir, with its pump covered, fell short of what was asked.</summary>
    public double? Days { get; private set; }

    /// <summary>True when a frame failed because no module length kept its holes clear of joints.</summary>
    public bool Holes { get; private set; }

    /// <summary>True when a frame failed because the catalogue has a pipe without one of its fittings.</summary>
    public bool Parts { get; private set; }

    public void AddPart() => Parts = true;

    public void AddAlong(double missing) => Along = Math.Min(Along ?? missing, missing);

    public void AddAcross(double missing) => Across = Math.Min(Across ?? missing, missing);

    public void AddFall(double missing) => Fall = Math.Min(Fall ?? missing, missing);

    public void AddDays(double missing) => Days = Math.Min(Days ?? missing, missing);

    public void AddHoles() => Holes = true;
}
