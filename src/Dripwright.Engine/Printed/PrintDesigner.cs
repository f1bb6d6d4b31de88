using Dripwright.Engine.Phrases;
using Dripwright.Engine.Printed.Makers;

namespace Dripwright.Engine.Printed;

/// <summary>Makes the description of any fitting from its parameters.</summary>
/// <remarks>Method pages: docs/methods/printed-fittings.md, docs/methods/joint-strength.md.</remarks>
public static class PrintDesigner
{
    /// <summary>What is wrong with the parameters; empty when the fitting can be made.</summary>
    /// <param name="kind">Its kind.</param>
    /// <param name="parameters">Its parameters.</param>
    public static IReadOnlyList<PrintFault> Check(PrintedKind kind, PrintParameters parameters)
    {
        PrintFault[] faults = [.. PrintChecks.Of(kind, parameters)];
        if (faults.Length > 0)
        {
            return faults;
        }

        try
        {
            Make(kind, parameters);
            return [];
        }
        catch (PrintException refused)
        {
            return [refused.Fault];
        }
    }

    /// <summary>The description of a fitting.</summary>
    /// <param name="kind">Its kind.</param>
    /// <param name="parameters">Its parameters.</param>
    /// <returns>Its shape as it is printed, with everything the builder should know.</returns>
    /// <exception cref="PrintException">It cannot be made from these parameters; see <see cref="Check"/>.</exception>
    public static PrintDesign For(PrintedKind kind, PrintParameters parameters)
    {
        foreach (var fault in PrintChecks.Of(kind, parameters))
        {
            throw new PrintException(fault);
        }

        var fitting = Make(kind, parameters);
        return fitting with { Cautions = [.. fitting.Cautions, .. General(fitting)] };
    }

    private static PrintDesign Make(PrintedKind kind, PrintParameters parameters) =>
        kind switch
        {
            PrintedKind.Coupler => CouplerMaker.Make(parameters),
            PrintedKind.Foot => FootMaker.Make(parameters),
            PrintedKind.TubeClip => BlockMaker.TubeClip(parameters),
            PrintedKind.DrainHanger => HangerMaker.Make(parameters),
            PrintedKind.ClampBlock => BlockMaker.ClampBlock(parameters),
            PrintedKind.LineRest => LineRestMaker.Make(parameters),
            PrintedKind.HoseClip => HoseClipMaker.Make(parameters),
            PrintedKind.DrillGuide => GuideMaker.Make(parameters),
            PrintedKind.StakeHolder => StakeHolderMaker.Make(parameters),
            PrintedKind.Coupon => CouponMaker.Make(parameters),
            _ => JointMaker.Make(kind, parameters),
        };

    /// <summary>What every part that bears a load has to say of heat; the same for all parts of one plastic.</summary>
    /// <param name="parameters">What it is made of.</param>
    public static Phrase HeatCaution(PrintParameters parameters)
    {
        ArgumentNullException.ThrowIfNull(parameters);
        var plastic = parameters.Plastic;
        return Phrase.Of(
            "print.caution.heat",
            plastic.Name,
            Measured.Celsius(plastic.CreepTemperature),
            Measured.Celsius(plastic.WarmestInUse)
        );
    }

    private static IEnumerable<Phrase> General(PrintDesign fitting)
    {
        var p = fitting.Parameters;
        if (fitting.Strength is not null || fitting.Hanger is not null)
        {
            yield return HeatCaution(p);
            if (p.Load.Temperature > p.Plastic.WarmestInUse)
            {
                yield return Phrase.Of("print.caution.creep", Measured.Celsius(p.Load.Temperature));
            }
        }

        if (fitting.Strength is { } strength)
        {
            yield return strength.PullOut > 0
                ? Phrase.Of("print.caution.squeeze", Measured.Newtons(strength.PullOut))
                : Phrase.Of("print.caution.friction");
            if (strength.HoopStress > strength.Allowed)
            {
                yield return Phrase.Of("print.caution.tight");
            }
        }

        if (fitting.LongestBridge > 0.030)
        {
            yield return Phrase.Of("print.caution.bridge", Measured.Millimetres(fitting.LongestBridge));
        }

        if (!fitting.Bed.Fits)
        {
            yield return Phrase.Of("print.caution.large");
        }
        else if (fitting.Bed.Place == BedPlace.Slanted)
        {
            yield return Phrase.Of("print.caution.turned");
        }
    }
}
