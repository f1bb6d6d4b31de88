using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Proposing;

/// <summary>Finds what a frame leaves open: stand height, slope, module length and the reservoir's place.</summary>
/// <remarks>
/// The first that fits is taken: the reservoir beyond the rows' end before under them, the usual slope before half of it, the
/// usual module before others, and the lowest stand from which the drain falls over the reservoir's rim.
/// </remarks>
internal sealed class FramePlacement(Brief brief, SearchSpace space, PartsCatalogue catalogue, Shortage shortage)
{
    private const double Inch = 0.0254;
    private const double SmallSlope = 0.01;

    /// <summary>[m] A cord that reaches everywhere, so that the stand-in pump never asks for a longer one.</summary>
    private const double LongCord = 90;

    // Room and fall do not ask how the rows are fed, so what was found for one frame holds for its likes.
    private readonly Dictionary<
        (RowPattern, DrainExit, string, string, bool, double, double, double),
        double?
    > _heights = [];

    private readonly bool _us = brief.Units == UnitSystem.Us;

    private double LowestStand => _us ? 24 * Inch : 0.6;

    private double StandStep => _us ? 3 * Inch : 0.05;

    /// <summary>[m] Pots higher than this are out of comfortable reach. Common practice.</summary>
    private double HighestStand => _us ? 42 * Inch : 1.05;

    private double[] Modules => _us ? [60 * Inch, 48 * Inch, 72 * Inch, 96 * Inch] : [1.5, 1.2, 1.8, 2.4];

    /// <summary>The frame in its place, or null where it does not fit.</summary>
    public FrameDraft? Place(Frame frame)
    {
        var rig = Start(frame);
        var length = catalogue.Tanks[frame.Tank].Length;
        foreach (var gap in new[] { rig.Reservoir.Gap, -length })
        {
            foreach (var slope in new[] { rig.Drain.Slope, SmallSlope })
            {
                foreach (var module in Modules)
                {
                    var tried = rig with
                    {
                        Reservoir = rig.Reservoir with { Gap = gap },
                        Drain = rig.Drain with { Slope = slope },
                    };
                    if (Raised(tried, frame, module) is { } placed)
                    {
                        return Draft(frame, placed.Rig, placed.Layout);
                    }
                }
            }
        }

        return null;
    }

    private (Rig Rig, RigLayout Layout)? Raised(Rig rig, Frame frame, double module)
    {
        (RowPattern, DrainExit, string, string, bool, double, double, double) like = (
            frame.Pattern,
            frame.Exit,
            frame.Drain,
            frame.Tank,
            frame.Gravity,
            rig.Reservoir.Gap,
            rig.Drain.Slope,
            module
        );
        if (!_heights.TryGetValue(like, out var height))
        {
            height = StandHeight(rig, frame, module);
            _heights.Add(like, height);
        }

        if (height is not { } stand)
        {
            return null;
        }

        var raised = With(rig, module, stand);
        if (RigLayout.TryOf(raised, catalogue) is not { } layout)
        {
            return null;
        }

        if (layout.Conflicts.Count == 0)
        {
            return (raised, layout);
        }

        shortage.AddHoles();
        return null;
    }

    private static Rig With(Rig rig, double module, double stand) =>
        rig with
        {
            Rows = [.. rig.Rows.Select(r => r with { ModuleLength = module, StandHeight = stand })],
        };

    /// <summary>[m] The lowest stand from which the water falls; null where the room or the fall does not allow it.</summary>
    private double? StandHeight(Rig rig, Frame frame, double module)
    {
        var height = LowestStand;
        while (true)
        {
            var tried = With(rig, module, height);
            if (RigLayout.TryOf(tried, catalogue) is not { } layout)
            {
                // The grower's own catalogue has a pipe without its elbow or tee.
                shortage.AddPart();
                return null;
            }

            (var along, var across) = space.Room(frame.Pattern);
            if (layout.LengthUsed > along + 1e-6)
            {
                shortage.AddAlong(layout.LengthUsed - along);
                return null;
            }

            if (layout.DepthUsed > across + 1e-6)
            {
                shortage.AddAcross(layout.DepthUsed - across);
                return null;
            }

            var fall = frame.Gravity
                ? -layout.Rows.Min(r => r.Drain.Path.Min(p => p.Z) - (layout.Parts.Drain.OutsideDiameter / 2) - r.Floor)
                : layout.Tank.Rim - (layout.Tank.Mouth.Z - (layout.Parts.Drain.InsideDiameter / 2));
            if (fall <= 0)
            {
                return height;
            }

            var raised = height + (Math.Ceiling((fall / StandStep) - 1e-9) * StandStep);
            if (raised > HighestStand + 1e-9)
            {
                shortage.AddFall(raised - HighestStand);
                return null;
            }

            height = raised;
        }
    }

    private static FrameDraft Draft(Frame frame, Rig rig, RigLayout layout)
    {
        var judge = new Judgement();
        new LayoutRules(rig, layout, judge).Judge();
        return new FrameDraft(
            frame,
            rig,
            layout,
            PartsFloor.Of(rig, layout),
            [.. judge.Findings.Where(f => f.Level != FindingLevel.Note)]
        );
    }

    private Rig Start(Frame frame)
    {
        var start = space.Start;
        (var along, var across) = space.Room(frame.Pattern);
        return start with
        {
            Name = brief.Name,
            Site = brief.Site with { RoomLength = along, RoomWidth = across },
            Rows = RowsOfPattern.Of(frame.Pattern, brief, start.Rows[0], catalogue),
            Feed = start.Feed with
            {
                Entry = frame.Entry,
                Line = frame.Line,
                EmittersPerPot = frame.Emitters,
                Emitter = space.Emitters[0].Key,
                Strainer = "none",
                Header = start.Feed.Header with { Pipe = frame.Header },
                SiphonBreak = !frame.Gravity,
            },
            Drain = start.Drain with
            {
                Pipe = frame.Drain,
                Outlet = frame.Outlet,
                Exit = frame.Exit,
                Into = frame.Gravity ? DrainTarget.CatchTank : DrainTarget.Reservoir,
            },
            Reservoir = start.Reservoir with
            {
                Tank = frame.Tank,
                Base = frame.Gravity ? brief.TankShelf!.Value : start.Reservoir.Base,
                UsePerPlant = brief.UsePerPlant,
                DaysWanted = brief.DaysWanted,
            },
            Pump = frame.Gravity
                ? start.Pump with
                {
                    Model = "none",
                }
                : start.Pump with
                {
                    // The highest inlet makes the shortest header: no real pump of this frame needs less of it.
                    Model = space.Pumps[0].Key,
                    InletHeight = space.Pumps.Max(p => p.InletHeight),
                    Power = space.Pumps.Min(p => p.Power),
                    Cord = LongCord,
                },
            Timer = frame.Gravity ? RigStarter.ByGravity(start.Timer) : start.Timer,
            OnHand = brief.OnHand,
        };
    }
}
