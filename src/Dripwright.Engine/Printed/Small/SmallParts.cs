using System.Globalization;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Printed;

/// <summary>Small parts that are printed besides the joints of the stand.</summary>
/// <remarks>Method page: docs/methods/printed-fittings.md</remarks>
internal static class SmallParts
{
    /// <summary>The small parts of a rig.</summary>
    /// <param name="rig">The rig.</param>
    /// <param name="layout">Its layout.</param>
    /// <param name="start">Tube, printer and plastic.</param>
    /// <param name="wantedOnly">True for those alone that the rig asks for.</param>
    public static IReadOnlyList<SmallPart> Of(Rig rig, RigLayout layout, PrintParameters start, bool wantedOnly)
    {
        var wanted = rig.Printing.SmallParts;
        List<SmallPart> parts = [];
        Offer(PrintedKind.LineRest, "lineRests", wanted.LineRests, () => LineRests.Of(layout, start));
        Offer(PrintedKind.HoseClip, "hoseClips", wanted.HoseClips, () => HoseHolders.Clips(rig, layout, start));
        Offer(PrintedKind.ClampBlock, "hoseClamp", wanted.HoseClamp, () => HoseHolders.Clamp(layout, start));
        Offer(PrintedKind.StakeHolder, "stakeHolders", wanted.StakeHolders, () => StakeHolders.Of(rig, layout, start));
        Offer(PrintedKind.DrillGuide, "drillGuides", wanted.DrillGuides, () => DrillGuides.Of(layout, start));
        Offer(
            PrintedKind.Coupler,
            "couplers",
            wanted.Couplers > 0,
            () => Couplers(layout, start, Math.Max(1, wanted.Couplers))
        );
        return parts;

        void Offer(PrintedKind kind, string field, bool isWanted, Func<SmallUse> find)
        {
            if (isWanted || !wantedOnly)
            {
                parts.Add(Make(kind, $"printing.smallParts.{field}", isWanted, find()));
            }
        }
    }

    private static SmallPart Make(PrintedKind kind, string field, bool wanted, SmallUse use)
    {
        List<PrintedPart> parts = [];
        List<RefusedPart> refused = [];
        var letter = PrintedJoints.Letter(kind);
        // Clip and clamp hold the same hose and share a letter, but each keeps its number whether or not the other is printed.
        var number = kind == PrintedKind.ClampBlock ? 1 : 0;
        string Next() => letter + (++number).ToString(CultureInfo.InvariantCulture);
        if (use.WhyNot is { } why)
        {
            refused.Add(new(Next(), why));
        }

        foreach (var piece in use.Pieces)
        {
            var name = Next();
            try
            {
                var fitting = PrintDesigner.For(kind, piece.Measures with { Number = name });
                parts.Add(
                    new(name, piece.Count, fitting, piece.Use) { Key = SmallPartKeys.Of(kind), Spots = piece.Spots }
                );
            }
            catch (PrintException no)
            {
                refused.Add(new(name, no.Fault));
            }
        }

        return new(kind, field, wanted, parts, refused);
    }

    private static SmallUse Couplers(RigLayout layout, PrintParameters start, int count) =>
        layout.Stand.Members.Count == 0
            ? SmallUse.None(
                "couplers",
                Phrase.Of("print.found.no-stand"),
                Phrase.Of("print.limit.stand"),
                Phrase.Of("print.remedy.no-couplers")
            )
            : new([new(start, count, Phrase.Of("print.use.coupler"), [])], null);
}

/// <summary>How many of a small part go where in a rig.</summary>
/// <param name="Pieces">The different ones.</param>
/// <param name="WhyNot">Why there is none; null where there is.</param>
internal sealed record SmallUse(IReadOnlyList<SmallPiece> Pieces, PrintFault? WhyNot)
{
    public static SmallUse None(string field, Phrase found, Phrase expected, Phrase remedy) =>
        new([], new(field, found, expected, remedy));
}

/// <summary>One small part before it is made.</summary>
/// <param name="Measures">Its measures.</param>
/// <param name="Count">How many.</param>
/// <param name="Use">Where it goes.</param>
/// <param name="Spots">The places; empty where they are the builder's to choose.</param>
internal sealed record SmallPiece(PrintParameters Measures, int Count, Phrase Use, IReadOnlyList<PrintedSpot> Spots);

/// <summary>Catalogue keys under which small parts are counted.</summary>
internal static class SmallPartKeys
{
    public static string Of(PrintedKind kind) =>
        kind switch
        {
            PrintedKind.LineRest => "line-rest",
            PrintedKind.HoseClip => "hose-clip",
            PrintedKind.ClampBlock => "clamp-block",
            PrintedKind.StakeHolder => "stake-holder",
            PrintedKind.DrillGuide => "drill-guide",
            _ => "joint-coupler",
        };
}
