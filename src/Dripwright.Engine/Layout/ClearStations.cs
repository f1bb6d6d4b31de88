namespace Dripwright.Engine.Layout;

/// <summary>Finds places on a run where a fitting covers no hole.</summary>
/// <param name="holes">Stations and radii of the holes, by station.</param>
internal sealed class ClearStations(IReadOnlyList<(double Station, double Radius)> holes)
{
    /// <summary>The clear station nearest to the wanted one, or null where there is none within the bounds.</summary>
    /// <param name="wanted">[m] Where the fitting's centre should be.</param>
    /// <param name="half">[m] How far the fitting reaches to either side.</param>
    /// <param name="least">[m] Lowest station allowed.</param>
    /// <param name="most">[m] Highest station allowed.</param>
    public double? Nearest(double wanted, double half, double least, double most)
    {
        double? left = Walk(wanted, half, least, most, -1);
        double? right = Walk(wanted, half, least, most, 1);
        return (left, right) switch
        {
            (null, _) => right,
            (_, null) => left,
            ({ } l, { } r) => wanted - l <= r - wanted ? l : r,
        };
    }

    private double? Walk(double wanted, double half, double least, double most, int direction)
    {
        double station = wanted;
        int i = IndexNear(station);
        while (station >= least - 1e-9 && station <= most + 1e-9)
        {
            int? blocking = Blocking(station, half, i);
            if (blocking is not { } b)
            {
                return station;
            }

            i = b;
            // The touch itself is clear: a hair more keeps rounding from calling it blocked again.
            station = holes[b].Station + (direction * (half + holes[b].Radius + 1e-9));
        }

        return null;
    }

    private int? Blocking(double station, double half, int near)
    {
        // Holes are sorted, and no radius exceeds 0.1 m, so looking this far to both sides sees every hole that can touch.
        for (int i = near; i >= 0 && station - holes[i].Station < half + 0.1; i--)
        {
            if (Math.Abs(station - holes[i].Station) < half + holes[i].Radius)
            {
                return i;
            }
        }

        for (int i = near + 1; i < holes.Count && holes[i].Station - station < half + 0.1; i++)
        {
            if (Math.Abs(station - holes[i].Station) < half + holes[i].Radius)
            {
                return i;
            }
        }

        return null;
    }

    private int IndexNear(double station)
    {
        int low = 0;
        int high = holes.Count;
        while (low < high)
        {
            int middle = (low + high) / 2;
            if (holes[middle].Station <= station)
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
