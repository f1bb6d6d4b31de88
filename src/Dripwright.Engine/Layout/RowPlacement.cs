using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Layout;

/// <summary>Where a row and its pots stand, before any pipe is laid.</summary>
internal sealed record RowPlace
{
    public required int Number { get; init; }
    public required int SpecIndex { get; init; }
    public required Row Spec { get; init; }
    public required PotType Pot { get; init; }
    public required int Modules { get; init; }
    public required double Length { get; init; }
    public required double OriginX { get; init; }
    public required double CentreY { get; init; }
    public required double Depth { get; init; }
    public required IReadOnlyList<PotPlace> Pots { get; init; }
    public required IReadOnlyList<double> Joints { get; init; }

    public double Floor => Spec.FloorLevel;

    public double Base => Spec.FloorLevel + Spec.StandHeight;
}

/// <summary>Places rows across the room and pots along the rows.</summary>
internal static class RowPlacement
{
    /// <summary>Places all rows of a rig, front to back, their ends next to the reservoir in line.</summary>
    public static List<RowPlace> Place(ResolvedRig resolved)
    {
        var rig = resolved.Rig;
        var longest = resolved.Rows.Max(r => LengthOf(r.Spec, r.Pot));
        double y = 0;
        List<RowPlace> places = [];
        foreach (var row in resolved.Rows.SelectMany(r => Enumerable.Repeat(r, r.Spec.Count)))
        {
            (var spec, var pot) = (row.Spec, row.Pot);
            var length = LengthOf(spec, pot);
            var depth = pot.Width + (spec.Arrangement == Arrangement.Staggered ? spec.LineDistance : 0);
            var centre = y + spec.Aisle + (depth / 2);
            var modules = ModulesOf(spec, pot);
            var origin = rig.Reservoir.At == RowEnd.Left ? 0 : longest - length;
            places.Add(
                new RowPlace
                {
                    Number = places.Count + 1,
                    SpecIndex = row.Index,
                    Spec = spec,
                    Pot = pot,
                    Modules = modules,
                    Length = length,
                    OriginX = origin,
                    CentreY = centre,
                    Depth = depth,
                    Pots = PotsOf(resolved, row, length, origin, centre),
                    Joints = [.. Enumerable.Range(0, modules + 1).Select(i => i * spec.ModuleLength)],
                }
            );
            y = centre + (depth / 2);
        }

        return places;
    }

    private static int ModulesOf(Row row, PotType pot)
    {
        if (row.Modules is { } given)
        {
            return given;
        }

        var needed = ((row.Pots - 1) * row.Spacing) + pot.Length;
        // A pot may stand flush with the end: rounding must not cost a module.
        return Math.Max(1, (int)Math.Ceiling((needed / row.ModuleLength) - 1e-9));
    }

    private static double LengthOf(Row row, PotType pot) => ModulesOf(row, pot) * row.ModuleLength;

    private static List<PotPlace> PotsOf(
        ResolvedRig rig,
        ResolvedRow resolved,
        double length,
        double origin,
        double centreY
    )
    {
        var row = resolved.Spec;
        var centred = (length - ((row.Pots - 1) * row.Spacing)) / 2;
        var first = centred + PotShift.Of(rig, resolved, length, centred);
        List<PotPlace> pots = new(row.Pots);
        for (var i = 0; i < row.Pots; i++)
        {
            var back = row.Arrangement == Arrangement.Staggered && i % 2 == 1;
            var y =
                row.Arrangement == Arrangement.Single ? centreY : centreY + ((back ? 0.5 : -0.5) * row.LineDistance);
            var station = first + (i * row.Spacing);
            var planted = resolved.Pots[i];
            pots.Add(
                new PotPlace
                {
                    Number = i + 1,
                    Station = station,
                    Base = new Vector3(origin + station, y, row.FloorLevel + row.StandHeight),
                    BackLine = back,
                    Crop = planted.Crop,
                    CropType = planted.CropType,
                    Plants = planted.Plants,
                    Emitters = planted.Emitters,
                    ValveOpen = planted.ValveOpen,
                    Tube = planted.Tube,
                }
            );
        }

        return pots;
    }
}
