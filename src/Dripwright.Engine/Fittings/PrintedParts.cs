using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Fittings;

/// <summary>One printed part of a rig and how many are needed.</summary>
/// <param name="Number">Piece number, as it stands on the part.</param>
/// <param name="Count">How many to print.</param>
/// <param name="Fitting">The part.</param>
/// <param name="Use">Where it goes.</param>
public sealed record PrintedPart(string Number, int Count, Fitting Fitting, string Use);

/// <summary>The printed parts of a rig.</summary>
/// <param name="Parts">Each different part, the coupon first.</param>
/// <param name="Refused">Parts that cannot be made as the rig asks, in words.</param>
public sealed record PrintedParts(IReadOnlyList<PrintedPart> Parts, IReadOnlyList<string> Refused)
{
    /// <summary>The printed parts of a rig's stands.</summary>
    /// <param name="rig">The rig.</param>
    /// <param name="layout">Its layout.</param>
    /// <returns>Nothing where no row has a stand.</returns>
    public static PrintedParts Of(Rig rig, RigLayout layout)
    {
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(layout);
        List<PrintedPart> parts = [];
        List<string> refused = [];
        if (layout.Stand.Members.Count == 0)
        {
            return new([], []);
        }

        FittingParameters start = Parameters(rig, layout);
        Add("V1", PrintedKind.Coupon, 1, start, "print this first: it tells which clearance fits your tube");
        foreach (StandFitting joint in StandFittings.Of(layout.Stand))
        {
            FittingParameters own = joint.Directions.Count > 0 ? start with { Sockets = joint.Directions } : start;
            Add(joint.Number, joint.Kind, joint.Joints.Count, own, Where(joint));
        }

        HashSet<int> standing = [.. layout.Stand.Members.Select(m => m.Row)];
        int saddles = layout.Rows.Where(r => standing.Contains(r.Number)).Sum(r => r.Modules + 1);
        Add("P1", PrintedKind.PipeSaddle, saddles, start, "holds the drain pipe, one at the end of each module");
        return new(parts, refused);

        void Add(string number, PrintedKind kind, int count, FittingParameters parameters, string use)
        {
            try
            {
                parts.Add(new(number, count, FittingShop.For(kind, parameters with { Number = number }), use));
            }
            catch (FittingException no)
            {
                refused.Add($"{number}: {no.Message}");
            }
        }
    }

    private static FittingParameters Parameters(Rig rig, RigLayout layout)
    {
        Printing printing = rig.Printing;
        return new FittingParameters
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
        };
    }

    private static string Where(StandFitting joint) =>
        joint.Kind switch
        {
            PrintedKind.Foot => "under each leg",
            PrintedKind.TubeClip => "where a tie crosses a leg",
            PrintedKind.ThreeWay => "over the legs of the end frames",
            PrintedKind.FourWay => "over the legs of the frames between",
            PrintedKind.Tee or PrintedKind.Cross => "where inner rails meet the cross-members",
            _ => "where tubes meet",
        };
}
