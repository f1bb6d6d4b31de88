using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Stands.Checks;
using Dripwright.Engine.Stands.Loads;

namespace Dripwright.Engine.Printed;

/// <summary>One place in the room where a printed part goes.</summary>
/// <param name="Row">Row, from 1; 0 at the reservoir.</param>
/// <param name="At">The place.</param>
public sealed record PrintedSpot(int Row, Vector3 At);

/// <summary>One printed part of a rig and how many are needed.</summary>
/// <param name="Number">Piece number, as it stands on the part.</param>
/// <param name="Count">How many to print.</param>
/// <param name="Design">The part.</param>
/// <param name="Use">Where it goes.</param>
public sealed record PrintedPart(string Number, int Count, PrintDesign Design, Phrase Use)
{
    /// <summary>Catalogue key under which it is counted; null for the coupon, which is none of the rig's parts.</summary>
    public string? Key { get; init; }

    /// <summary>The joints of the stand that it serves; null for what is no joint.</summary>
    public PrintedJoint? Place { get; init; }

    /// <summary>Where in the rig it goes; empty where that is the builder's to say.</summary>
    public IReadOnlyList<PrintedSpot> Spots { get; init; } = [];

    /// <summary>Where the moment is from that its sockets were made for.</summary>
    public MomentSource Moment { get; init; }
}

/// <summary>Where the moment is from that a joint's sockets were made for.</summary>
public enum MomentSource
{
    /// <summary>It has no sockets, or they carry nothing.</summary>
    None,

    /// <summary>The frame's own results ask for less than a firm push, so that counts.</summary>
    Usual,

    /// <summary>The frame's own results.</summary>
    Frame,
}

/// <summary>A part that cannot be made as the rig asks.</summary>
/// <param name="Number">Piece number.</param>
/// <param name="Fault">Why not, and what to do.</param>
public sealed record RefusedPart(string Number, PrintFault Fault)
{
    /// <summary>In one line, for the builder: the parameter's name would tell them nothing.</summary>
    public Phrase Sentence => Phrase.Of("print.refused", Number, Fault.Found, Fault.Expected, Fault.Remedy);
}

/// <summary>The printed parts of a rig.</summary>
/// <param name="Parts">Each different part, the coupon first.</param>
/// <param name="Refused">Parts that cannot be made as the rig asks.</param>
public sealed record PrintedParts(IReadOnlyList<PrintedPart> Parts, IReadOnlyList<RefusedPart> Refused)
{
    /// <summary>Piece number of the coupon that finds the clearance.</summary>
    public const string Coupon = "X1";

    /// <summary>[-] Filament for skirts, supports and failed prints, over what the parts hold. Common practice.</summary>
    public const double Waste = 0.15;

    /// <summary>None.</summary>
    public static PrintedParts None { get; } = new([], []);

    /// <summary>Which parts the joints of the stands need, whether or not they can be made.</summary>
    public IReadOnlyList<PrintedJoint> Places { get; init; } = [];

    /// <summary>What they are made of and by what they are printed; null where nothing is printed.</summary>
    public PrintParameters? Made { get; init; }

    /// <summary>The strength of the stands that the sockets were made for; null where it was not known.</summary>
    public StandPlan? MadeFor { get; init; }

    /// <summary>The printed parts of a rig's stands, and the small parts that it asks for.</summary>
    /// <remarks>
    /// The sockets of a joint are made for the greatest moment that the frame brings it in any combination, but never for
    /// less than <see cref="JointLoad.Usual"/>. A person leans for a minute, so those combinations count with the share of
    /// strength that plastics keep for years.
    /// </remarks>
    /// <param name="rig">The rig.</param>
    /// <param name="layout">Its layout.</param>
    /// <param name="strength">The strength of its stands; null where it was not computed.</param>
    /// <returns>Nothing where no row has a stand and no small part is asked for.</returns>
    public static PrintedParts Of(Rig rig, RigLayout layout, StandPlan? strength)
    {
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(layout);
        var start = Parameters(rig, layout);
        var small = SmallParts.Of(rig, layout, start, wantedOnly: true);
        var stands = layout.Stand.Members.Count > 0;
        if (!stands && small.Count == 0)
        {
            return None with { MadeFor = strength };
        }

        List<PrintedPart> parts = [];
        List<RefusedPart> refused = [];
        var places = PrintedJoints.Of(layout.Stand);
        var moments = new JointMoments(strength);
        if (stands)
        {
            Add(Coupon, PrintedKind.Coupon, 1, start, Phrase.Of("print.use.coupon"), null);
        }

        foreach (var place in places)
        {
            var own = start;
            if (place.Hanger is { } hanger)
            {
                own = start with { HangerMount = hanger.Mount, HangerReach = hanger.Reach, HangerLow = hanger.Low };
            }
            else if (place.Directions.Count > 0)
            {
                var moment = Math.Max(start.Load.Moment, moments.Of(place));
                own = start with { Sockets = place.Directions, Load = start.Load with { Moment = moment } };
            }

            Add(place.Number, place.Kind, place.Joints.Count, own, Where(place), place);
        }

        parts.AddRange(small.SelectMany(one => one.Parts));
        refused.AddRange(small.SelectMany(one => one.Refused));
        return new(parts, refused)
        {
            Places = places,
            Made = start,
            MadeFor = strength,
        };

        void Add(
            string number,
            PrintedKind kind,
            int count,
            PrintParameters parameters,
            Phrase use,
            PrintedJoint? place
        )
        {
            try
            {
                var fitting = PrintDesigner.For(kind, parameters with { Number = number });
                parts.Add(
                    new(number, count, fitting, use)
                    {
                        Key = place?.Joints[0].Part,
                        Place = place,
                        Spots = [.. (place?.Joints ?? []).Select(joint => new PrintedSpot(joint.Row, joint.At))],
                        Moment =
                            fitting.Strength is null || place is null ? MomentSource.None
                            : parameters.Load.Moment > start.Load.Moment ? MomentSource.Frame
                            : MomentSource.Usual,
                    }
                );
            }
            catch (PrintException no)
            {
                refused.Add(new(number, no.Fault));
            }
        }
    }

    /// <summary>Small parts that this rig could have printed, whether or not it asks for them.</summary>
    /// <param name="rig">The rig.</param>
    /// <param name="layout">Its layout.</param>
    public static IReadOnlyList<SmallPart> Small(Rig rig, RigLayout layout)
    {
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(layout);
        return SmallParts.Of(rig, layout, Parameters(rig, layout), wantedOnly: false);
    }

    private static PrintParameters Parameters(Rig rig, RigLayout layout)
    {
        var printing = rig.Printing;
        return new PrintParameters
        {
            TubeShape = layout.Stand.Tube.Shape,
            TubeOutside = printing.TubeOutside ?? layout.Stand.Tube.Outside,
            Clearance = printing.Clearance,
            SocketDepth = rig.Stand.SocketDepth,
            JointCentre = rig.Stand.JointCentre,
            PipeOutside = layout.Parts.Drain.OutsideDiameter,
            Printer = new Printer
            {
                Nozzle = printing.Nozzle,
                Layer = printing.Layer,
                BedWidth = printing.BedWidth,
                BedDepth = printing.BedDepth,
                Height = printing.BedHeight,
            },
            Plastic = printing.Plastic switch
            {
                PrintPlastic.Pla => Plastic.Pla,
                PrintPlastic.Abs => Plastic.Abs,
                PrintPlastic.Asa => Plastic.Asa,
                _ => Plastic.Petg,
            },
            Load = JointLoad.Usual with { Temperature = printing.Warmest },
            PilotDrill = printing.SmallParts.PilotDrill,
            StakeDiameter = printing.SmallParts.StakeDiameter,
            RimThickness = printing.SmallParts.RimThickness,
            HangerLoad = HangerLoad(layout),
        };
    }

    /// <summary>[N] Most that one hanger carries: the pipe of the longest span, full of water.</summary>
    private static double HangerLoad(RigLayout layout)
    {
        var span = layout.Rows.Max(row =>
            row.Hangers.Zip(row.Hangers.Skip(1), (a, b) => b.Station - a.Station).DefaultIfEmpty(0).Max()
        );
        var weight = PipeBeam.Weight(layout.Parts.Drain, new LoadValues().PipeDensity, full: true);
        return HangerStrength.LargestShare * weight * span;
    }

    private static Phrase Where(PrintedJoint joint) =>
        joint.Kind switch
        {
            PrintedKind.Foot => Phrase.Of("print.use.foot"),
            PrintedKind.TubeClip => Phrase.Of("print.use.tube-clip"),
            PrintedKind.DrainHanger => joint.Hanger!.Mount switch
            {
                HangerMount.Leg => Phrase.Of("print.use.hanger.leg"),
                HangerMount.Cross => Phrase.Of("print.use.hanger.cross"),
                _ => Phrase.Of("print.use.hanger.rail"),
            },
            PrintedKind.ThreeWay => Phrase.Of("print.use.three-way"),
            PrintedKind.FourWay => Phrase.Of("print.use.four-way"),
            PrintedKind.Tee or PrintedKind.Cross => Phrase.Of("print.use.tee"),
            _ => Phrase.Of("print.use.joint"),
        };
}
