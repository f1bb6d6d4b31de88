namespace Dripwright.Engine.Layout;

/// <summary>Finds places on a run where something of a given width covers nothing else.</summary>
/// <param name="things">Stations and half widths of what lies on the run, by station.</param>
internal sealed class ClearStations(IReadOnlyList<(double Station, double Half)> things)
{
    /// <summary>The touch itself is clear: a hair more keeps rounding from calling it blocked again.</summary>
    private const double Hair = 1e-9;

    private readonly double _widest = things.Count == 0 ? 0 : things.Max(t => t.Half);

    /// <summary>The clear station nearest to the wanted one, or null where there is none within the bounds.</summary>
    /// <param name="wanted">[m] Where the centre should be.</param>
    /// <param name="half">[m] How far it reaches to either side.</param>
    /// <param name="least">[m] Lowest station allowed.</param>
    /// <param name="most">[m] Highest station allowed.</param>
    /// <param name="rightOnTie">Which of two equally near stations to take.</param>
    /// <param name="except">Index of a thing that does not count; -1 for none.</param>
    public double? Nearest(
        double wanted,
        double half,
        double least,
        double most,
        bool rightOnTie = false,
        int except = -1
    )
    {
        var left = Walk(Math.Min(wanted, most), half, least, most, -1, except);
        var right = Walk(Math.Max(wanted, least), half, least, most, 1, except);
        return (left, right) switch
        {
            (null, _) => right,
            (_, null) => left,
            // Ten hairs: both walks may have rounded.
            ({ } l, { } r) when Math.Abs(wanted - l - (r - wanted)) < 10 * Hair => rightOnTie ? r : l,
            ({ } l, { } r) => wanted - l < r - wanted ? l : r,
        };
    }

    /// <summary>Index of a thing that is in the way, or null.</summary>
    /// <param name="station">[m] Centre.</param>
    /// <param name="half">[m] Reach to either side.</param>
    /// <param name="except">Index of a thing that does not count; -1 for none.</param>
    public int? Blocking(double station, double half, int except = -1)
    {
        var near = IndexNear(station);
        for (var i = near; i >= 0 && station - things[i].Station < half + _widest; i--)
        {
            if (i != except && Math.Abs(station - things[i].Station) < half + things[i].Half)
            {
                return i;
            }
        }

        for (var i = near + 1; i < things.Count && things[i].Station - station < half + _widest; i++)
        {
            if (i != except && Math.Abs(station - things[i].Station) < half + things[i].Half)
            {
                return i;
            }
        }

        return null;
    }

    private double? Walk(double start, double half, double least, double most, int direction, int except)
    {
        var station = start;
        while (station >= least - Hair && station <= most + Hair)
        {
            if (Blocking(station, half, except) is not { } blocking)
            {
                return station;
            }

            station = things[blocking].Station + (direction * (half + things[blocking].Half + Hair));
        }

        return null;
    }

    private int IndexNear(double station)
    {
        var low = 0;
        var high = things.Count;
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (things[middle].Station <= station)
            {
                low = middle + 1;
            }
            else
            {
                high = middle;
            }
        }

        return low - 1;
    }
}
