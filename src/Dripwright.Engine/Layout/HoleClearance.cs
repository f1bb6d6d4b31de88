using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Layout;

/// <summary>Finds holes that lie on a fitting, on a module joint, on another hole, or off the pipe.</summary>
internal static class HoleClearance
{
    /// <summary>[m] Less overlap than this is rounding, not a fault.</summary>
    private const double Rounding = 1e-6;

    /// <summary>Every hole of a run that lies wrong, each once.</summary>
    /// <param name="run">The run.</param>
    /// <param name="joints">[m] Stations of the module joints; empty for a run that does not lie on a stand.</param>
    /// <param name="jointHalf">[m] Half width of a module joint: half the stand tube's outside.</param>
    public static IEnumerable<HoleConflict> Check(PipeRun run, IReadOnlyList<double> joints, double jointHalf)
    {
        List<(double Station, double Half, Phrase Name, int Hole)> things =
        [
            .. run.Fittings.Select(f => (f.Station, f.Reach, f.Name, 0)),
            .. joints.Select((j, i) => (j, jointHalf, Phrase.Of("hole.on.joint", i + 1), 0)),
            .. run.Holes.Select(h => (h.Station, h.Diameter / 2, Phrase.Of("hole.on.hole"), h.Number)),
        ];
        things.Sort((a, b) => a.Station != b.Station ? a.Station.CompareTo(b.Station) : a.Hole.CompareTo(b.Hole));
        var clear = new ClearStations([.. things.Select(t => (t.Station, t.Half))]);
        for (var own = 0; own < things.Count; own++)
        {
            if (things[own].Hole == 0)
            {
                continue;
            }

            var hole = run.Holes[things[own].Hole - 1];
            var radius = hole.Diameter / 2;
            var least = run.Start + radius;
            var most = run.End - radius;
            var with =
                clear.Blocking(hole.Station, radius - Rounding, own) is { } blocking ? things[blocking].Name
                : hole.Station < least - Rounding || hole.Station > most + Rounding ? Phrase.Of("hole.on.end")
                : null;
            if (with is not null)
            {
                var cured = clear.Nearest(hole.Station, radius, least, most, except: own);
                yield return new HoleConflict(run.Label, hole, with, (cured ?? hole.Station) - hole.Station);
            }
        }
    }
}
