using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Printed.Makers;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Printed;

/// <summary>Where the feed line lies on the pots' rims and can be held there.</summary>
internal static class LineRests
{
    /// <summary>[m] How far a line may run over or under the rims and still lie in its rest. Common practice.</summary>
    private const double Hover = 0.010;

    /// <summary>[m] A straight rim is gripped no nearer to its corner than this. Common practice.</summary>
    private const double Corner = 0.020;

    /// <summary>[m] Between a rest and a hole or a fitting of the line, for fingers and cable tie. Common practice.</summary>
    private const double Free = 0.003;

    /// <summary>[-] Most that a line may lie beside the middle of a round pot, by its radius: the rim then turns 15° away.</summary>
    private const double Aslant = 0.26;

    public static SmallUse Of(RigLayout layout, PrintParameters start)
    {
        List<SmallPiece> pieces = [];
        foreach (var alike in layout.Rows.GroupBy(row => row.Pot.Round ? row.Pot.Length / 2 : (double?)null))
        {
            var own = start with { HoseOutside = layout.Parts.Line.OutsideDiameter, RimRadius = alike.Key };
            var half = LineRestMaker.Along(own) / 2;
            PrintedSpot[] spots = [.. alike.SelectMany(row => Spots(row, half))];
            var pots = alike.Sum(row => row.Pots.Count);
            if (spots.Length > 0)
            {
                var where =
                    spots.Length == pots
                        ? Phrase.Of("print.use.line-rest")
                        : Phrase.Of("print.use.line-rest.some", spots.Length, pots);
                pieces.Add(new(own, spots.Length, where, spots));
            }
        }

        return pieces.Count > 0
            ? new(pieces, null)
            : SmallUse.None(
                "lineRests",
                Phrase.Of("print.found.rims"),
                Phrase.Of("print.limit.rims"),
                Phrase.Of("print.remedy.near")
            );
    }

    /// <summary>One on each pot whose rim the line crosses where it has neither hole nor fitting.</summary>
    private static IEnumerable<PrintedSpot> Spots(RowLayout row, double half)
    {
        // The outer leg of the hook hangs between two pots of a line.
        var pitch = row.Spec.Spacing * (row.Spec.Arrangement == Arrangement.Single ? 1 : 2);
        if (row.Pots.Count > 1 && pitch - row.Pot.Length < half)
        {
            yield break;
        }

        (PipeRun Run, ClearStations Clear)[] lines =
        [
            .. row
                .Feed.Where(run => Math.Abs(run.Path[0].Y - run.Path[^1].Y) < 1e-9)
                .Select(run => (run, new ClearStations(Things(run)))),
        ];
        foreach (var pot in row.Pots)
        {
            foreach ((var run, var clear) in lines)
            {
                if (Station(row, pot, run, clear, half) is { } station)
                {
                    var rim = pot.Base.Z + row.Pot.Height;
                    yield return new(row.Number, new(row.OriginX + station, run.Path[0].Y, rim));
                    break;
                }
            }
        }
    }

    private static (double Station, double Half)[] Things(PipeRun run) =>
        [
            .. run
                .Holes.Select(hole => (hole.Station, Half: hole.Diameter / 2))
                .Concat(run.Fittings.Select(fitting => (fitting.Station, Half: fitting.Reach)))
                .OrderBy(thing => thing.Station),
        ];

    private static double? Station(RowLayout row, PotPlace pot, PipeRun run, ClearStations clear, double half)
    {
        var under = run.Path[0].Z - (run.Pipe.OutsideDiameter / 2) - pot.Base.Z - row.Pot.Height;
        var aside = Math.Abs(run.Path[0].Y - pot.Base.Y);
        if (Math.Abs(under) > Hover || Reach(row, aside) is not { } reach)
        {
            return null;
        }

        foreach (var station in (double[])[pot.Station + reach, pot.Station - reach])
        {
            var on = station - half >= run.Start && station + half <= run.End;
            if (on && clear.Blocking(station, half + Free) is null)
            {
                return station;
            }
        }

        return null;
    }

    /// <summary>[m] From the middle of the pot to its rim, along the line; null where the line misses it or crosses it aslant.</summary>
    private static double? Reach(RowLayout row, double aside)
    {
        if (!row.Pot.Round)
        {
            return aside <= (row.Pot.Width / 2) - Corner ? row.Pot.Length / 2 : null;
        }

        var radius = row.Pot.Length / 2;
        return aside <= Aslant * radius ? Math.Sqrt((radius * radius) - (aside * aside)) : null;
    }
}
