using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Tests.Parts;

/// <summary>
/// Counts a rig's parts a second time, as a person with the rig file and a pencil would: from the rig alone, by what is plain to
/// see. It shares no rule of thumb with the engine: what only such a rule can tell, a pencil leaves uncounted.
/// </summary>
internal static class Recount
{
    /// <summary>What depends on how many rails and ties a stand has.</summary>
    private static readonly string[] s_ofTheFrame =
    [
        "joint-three-way",
        "joint-four-way",
        "joint-tee",
        "joint-cross",
        "joint-clip",
        "joint-screw",
    ];

    /// <param name="rig">The rig.</param>
    /// <param name="catalogue">Its parts.</param>
    /// <returns>How many of each part; a part that a pencil cannot tell is left out.</returns>
    public static Dictionary<string, int> Of(Rig rig, PartsCatalogue catalogue)
    {
        Dictionary<string, int> counts = [];
        void Add(string key, int count)
        {
            if (count > 0)
            {
                counts[key] = counts.GetValueOrDefault(key) + count;
            }
        }

        var line = catalogue.Pipes[rig.Feed.Line];
        var header = catalogue.Pipes[rig.Feed.Header.Pipe];
        var drain = catalogue.Pipes[rig.Drain.Pipe];
        Row[] rows = [.. rig.Rows.SelectMany(r => Enumerable.Repeat(r, r.Count))];
        var pots = 0;
        var emitters = 0;
        var planted = 0;
        var plugged = 0;
        var legs = 0;
        var hangers = 0;
        var beside = true;
        var told = true;
        var members = 0;
        foreach (var row in rows)
        {
            var pot = catalogue.Pots[row.Pot];
            Add(row.Pot, row.Pots);
            pots += row.Pots;
            var grown = row.Planting is null ? row.Pots : Math.Max(1, row.Pots / 2);
            var each = row.Planting?[0].Emitters ?? rig.Feed.EmittersPerPot;
            var empty = rig.Feed.EmittersAtEmptyPots ? (row.Pots - grown) * rig.Feed.EmittersPerPot : 0;
            emitters += (grown * each) + empty;
            planted += grown * each;
            plugged += rig.Feed.InlineValves ? 0 : empty;

            var modules = 1;
            while ((modules * row.ModuleLength) + 1e-9 < ((row.Pots - 1) * row.Spacing) + pot.Length)
            {
                modules++;
            }

            if (OnFloor(row))
            {
                continue;
            }

            var lines = row.Arrangement == Arrangement.Single ? 1 : 2;
            // Two rails under each line of pots. Pots of two lines that all but touch share the middle one; with a hand's
            // breadth between them they do not. Low ties are left out of a stand as low as a bucket and are there at knee height.
            var alley = row.LineDistance - pot.Width;
            var rails =
                lines == 1 ? 2
                : alley > 0.09 ? 4
                : 3;
            told &= lines == 1 || alley is > 0.09 or < 0.004;
            var ties = rig.Stand.LowTies && row.StandHeight > 0.5;
            told &= !rig.Stand.LowTies || row.StandHeight is > 0.5 or < 0.4;
            // A drain in the middle hangs where it has room, which a pencil does not tell.
            beside &= lines == 1 && row.DrainSide != Side.Middle;
            hangers += modules + 1;
            legs += 2 * (modules + 1);
            Add("tie-strap", rig.Stand.Tied ? modules + 1 : 0);
            Add("wall-anchor", rig.Stand.Tied ? 2 * (modules + 1) : 0);
            members += (2 * (modules + 1)) + ((rails - 1) * (modules + 1)) + (rails * modules);
            members += ties ? modules + 1 + modules : 0;
            Add("joint-three-way", 4);
            Add("joint-four-way", 2 * (modules - 1));
            Add("joint-tee", 2 * (rails - 2));
            Add("joint-cross", (rails - 2) * (modules - 1));
            Add("joint-clip", ties ? (2 * (modules + 1)) + (2 * modules) : 0);
        }

        Add("joint-foot", legs);
        var small = rig.Printing.SmallParts;
        var ends = rig.Feed.Entry == FeedEntry.BothEnds ? 2 : 1;
        var hose = catalogue.Pipes[rig.Feed.Header.Pipe].Flexible;
        // On a low leg there may be no room, which a pencil does not tell.
        var leg = rows.FirstOrDefault(r => !OnFloor(r))?.StandHeight ?? 0;
        Add("hose-clip", small.HoseClips && hose && leg > 0.5 ? 2 * ends : 0);
        var clamps = small.HoseClamp && hose && rig.Pump.Model != "none" ? 1 : 0;
        Add("clamp-block", clamps);
        Add("clamp-screw", 2 * clamps);
        Add("stake-holder", small.StakeHolders && rig.Feed.MicrotubeLength > 0 ? planted : 0);
        Add("joint-coupler", legs > 0 ? small.Couplers : 0);
        if (beside)
        {
            Add("drain-hanger", hangers);
            Add("joint-screw", (2 * members) + hangers);
        }

        Add(rig.Feed.Emitter, emitters);
        // The two tubes in shops have a bore of 0.165 in and of 4 mm; a tape tells them apart by the nearer one.
        var given = rig.Feed.MicrotubeBore;
        var bore = Math.Abs(given - (0.165 * 0.0254)) < Math.Abs(given - 0.004) ? "1/4" : "4mm";
        Add($"goof-plug-{bore}", plugged);
        Add($"inline-valve-{bore}", rig.Feed.InlineValves ? emitters : 0);
        foreach (var piece in catalogue.Emitters[rig.Feed.Emitter].Pieces)
        {
            Add(piece, emitters);
        }

        foreach (var piece in catalogue.Outlets[rig.Drain.Outlet].Pieces)
        {
            Add(piece, pots);
        }

        // Fittings at the lines' ends; couplings depend on where pieces end, and are checked by the lengths instead.
        var n = rows.Length;
        var entry = rig.Feed.Entry;
        Fittings fittings = new(catalogue, Add);
        fittings.Add(
            line,
            FittingKind.Cap,
            entry == FeedEntry.Middle ? 2 * n
                : entry == FeedEntry.End ? n
                : 0
        );
        fittings.Add(line, FittingKind.Elbow90, entry == FeedEntry.Loop ? 4 * n : 0);
        fittings.Add(line, FittingKind.Tee, entry is FeedEntry.Loop or FeedEntry.Middle ? n : 0);
        fittings.AddStraight(line, entry == FeedEntry.BothEnds ? 2 * n : n);

        var both = entry == FeedEntry.BothEnds;
        var bypass = rig.Feed.Bypass is not null;
        var taps = both ? 2 * (n - 1) : n - 1;
        fittings.Add(header, FittingKind.CheckValve, rig.Feed.CheckValve ? 1 : 0);
        fittings.Add(header, FittingKind.Valve, (bypass ? 1 : 0) + (rig.Feed.Throttle is null ? 0 : 1));
        fittings.Add(header, FittingKind.Elbow90, rig.Feed.Header.Elbows + (both ? 1 : 0) + (bypass ? 1 : 0));
        fittings.Add(header, FittingKind.Tee, taps + (both ? 1 : 0) + (bypass ? 1 : 0));
        var inline = rig.Feed.Strainer == "none" || catalogue.Strainers[rig.Feed.Strainer].Loss == 0 ? 0 : 2;
        // Pump, every end at a last row, and a thread beside every tee of a tap.
        fittings.AddStraight(header, 1 + (both ? 2 : 1) + taps + inline);

        var vent = rig.Drain.Vent;
        var highEnds = rig.Drain.Exit == DrainExit.Middle ? 2 * n : n;
        fittings.Add(drain, FittingKind.Cap, vent ? 0 : highEnds);
        Add("vent-screen", vent ? highEnds : 0);
        Add("thread-coupling", both ? 2 * n : n);

        Add(rig.Reservoir.Tank, 1);
        if (rig.Feed.Strainer != "none")
        {
            Add(rig.Feed.Strainer, 1);
        }

        Add(rig.Pump.Model == "none" ? "bulkhead-fitting" : rig.Pump.Model, 1);
        if (rig.Pump.Model != "none")
        {
            Add("timer-outlet", 1);
            Add("gfci-adapter", 1);
        }
        else if (rig.Timer.Mode == TimerMode.Cycle)
        {
            Add("timer-valve", 1);
        }

        foreach (var key in told ? [] : s_ofTheFrame)
        {
            counts.Remove(key);
        }
        return counts;
    }

    /// <summary>Pots that stand lower than a brick is high stand on the floor.</summary>
    private static bool OnFloor(Row row) => row.StandHeight < 0.05;

    /// <summary>Adds fittings of a pipe by their key as it is written in shops.</summary>
    private sealed class Fittings(PartsCatalogue catalogue, Action<string, int> add)
    {
        public void Add(PipeSize pipe, FittingKind kind, int count)
        {
            var name = kind switch
            {
                FittingKind.Elbow90 => "elbow-90",
                FittingKind.CheckValve => "check-valve",
                _ => kind.ToString().ToLowerInvariant(),
            };
            var key = $"{pipe.Key}-{name}";
            Assert.True(catalogue.Fittings.ContainsKey(key), key);
            add(key, count);
        }

        public void AddStraight(PipeSize pipe, int count) =>
            Add(pipe, pipe.Flexible ? FittingKind.Barb : FittingKind.Adapter, count);
    }
}
