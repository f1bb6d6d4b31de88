using Dripwright.Engine.Printed.Makers;

namespace Dripwright.Engine.Printed;

/// <summary>Makes the description of any fitting from its parameters.</summary>
/// <remarks>Method pages: docs/methods/printed-fittings.md, docs/methods/joint-strength.md.</remarks>
public static class FittingShop
{
    /// <summary>What is wrong with the parameters; empty when the fitting can be made.</summary>
    /// <param name="kind">Its kind.</param>
    /// <param name="parameters">Its parameters.</param>
    public static IReadOnlyList<FittingFault> Check(PrintedKind kind, FittingParameters parameters)
    {
        FittingFault[] faults = [.. FittingChecks.Of(kind, parameters)];
        if (faults.Length > 0)
        {
            return faults;
        }

        try
        {
            Make(kind, parameters);
            return [];
        }
        catch (FittingException refused)
        {
            return [refused.Fault];
        }
    }

    /// <summary>The description of a fitting.</summary>
    /// <param name="kind">Its kind.</param>
    /// <param name="parameters">Its parameters.</param>
    /// <returns>Its shape as it is printed, with everything the builder should know.</returns>
    /// <exception cref="FittingException">It cannot be made from these parameters; see <see cref="Check"/>.</exception>
    public static Fitting For(PrintedKind kind, FittingParameters parameters)
    {
        foreach (FittingFault fault in FittingChecks.Of(kind, parameters))
        {
            throw new FittingException(fault);
        }

        Fitting fitting = Make(kind, parameters);
        return fitting with { Cautions = [.. fitting.Cautions, .. General(fitting)] };
    }

    private static Fitting Make(PrintedKind kind, FittingParameters parameters) =>
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
    public static string HeatCaution(FittingParameters parameters)
    {
        ArgumentNullException.ThrowIfNull(parameters);
        Plastic plastic = parameters.Plastic;
        return $"{plastic.Name} sags under load from {Words.Celsius(plastic.CreepTemperature)}; keep it under "
            + $"{Words.Celsius(plastic.WarmestInUse)}.";
    }

    private static IEnumerable<string> General(Fitting fitting)
    {
        FittingParameters p = fitting.Parameters;
        if (fitting.Strength is not null || fitting.Hanger is not null)
        {
            yield return HeatCaution(p);
            if (p.Load.Temperature > p.Plastic.WarmestInUse)
            {
                yield return $"At {Words.Celsius(p.Load.Temperature)} it will creep: take a plastic that stands the heat.";
            }
        }

        if (fitting.Strength is { } strength)
        {
            yield return strength.PullOut > 0
                ? $"The squeeze holds about {Words.Number(strength.PullOut)} N for years; a screw or pin holds better."
                : "Nothing but friction holds the tube in: where it may be pulled, put a screw or a cable tie through.";
            if (strength.HoopStress > strength.Allowed)
            {
                yield return "A bore this tight will split in time: take more clearance.";
            }
        }

        if (fitting.LongestBridge > 0.030)
        {
            yield return $"The roof of its bore is a bridge of {Words.Millimetres(fitting.LongestBridge)}: print it slowly, with the fan on.";
        }

        if (!fitting.Bed.Fits)
        {
            yield return "It does not fit the printer.";
        }
        else if (fitting.Bed.Place == BedPlace.Slanted)
        {
            yield return "It fits the bed only when turned: let the slicer arrange it.";
        }
    }
}
