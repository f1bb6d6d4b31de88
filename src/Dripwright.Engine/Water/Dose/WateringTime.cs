using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Water;

/// <summary>How long to water so that every pot is given what is wanted on a hot day.</summary>
internal static class WateringTime
{
    /// <summary>[s] The longest watering that is offered; a pot drains between two of them.</summary>
    private const double Longest = 3600;

    private const double Day = 86_400;

    /// <summary>[s] The least watering that does it, in whole minutes; null where no watering of up to an hour does.</summary>
    /// <param name="timer">The rig's timer; taken as one that waters on and off in turn.</param>
    /// <param name="dose">What its pots are given now.</param>
    public static double? Minutes(Rigs.Timer timer, DosePlan dose) =>
        Whole(
            dose.Pots.Select(pot => LongEnough(timer, dose, pot)).DefaultIfEmpty(double.PositiveInfinity).Max(),
            60,
            Longest
        );

    /// <summary>[s] The least hours of the day that do it, in whole hours; null where a whole day does not.</summary>
    /// <param name="timer">The rig's timer.</param>
    /// <param name="dose">What its pots are given now.</param>
    public static double? Hours(Rigs.Timer timer, DosePlan dose) =>
        Whole(
            dose.Pots.Select(pot => HoursEnough(timer, dose, pot)).DefaultIfEmpty(double.PositiveInfinity).Max(),
            3600,
            Day
        );

    /// <summary>The change of a watering's length.</summary>
    /// <param name="seconds">[s] Whole minutes.</param>
    public static FieldChange On(double seconds) => Minutes("timer.on", seconds);

    /// <summary>The change of a time that a timer keeps.</summary>
    /// <param name="field">Path of the field.</param>
    /// <param name="seconds">[s] Whole minutes.</param>
    public static FieldChange Minutes(string field, double seconds) =>
        RigCure.Text(field, $"{QuantityWords.Count((int)(seconds / 60))} min");

    /// <summary>The change of the hours of the day.</summary>
    /// <param name="seconds">[s] Whole hours.</param>
    public static FieldChange HoursPerDay(double seconds) =>
        RigCure.Text("timer.hoursPerDay", $"{QuantityWords.Count((int)(seconds / 3600))} h");

    private static double? Whole(double seconds, double step, double most)
    {
        var whole = Math.Ceiling((seconds / step) - 1e-6) * step;
        return whole <= most ? Math.Max(step, whole) : null;
    }

    // n = H / (on + off) waterings of on - fill seconds: n (on - fill) flow >= wanted, solved for on.
    private static double LongEnough(Rigs.Timer timer, DosePlan dose, PotDose pot)
    {
        var hours = timer.HoursPerDay;
        var most = (hours * pot.Flow) - pot.Wanted;
        return most > 0
            ? ((pot.Wanted * timer.Off) + (hours * pot.Flow * dose.FillTime)) / most
            : double.PositiveInfinity;
    }

    private static double HoursEnough(Rigs.Timer timer, DosePlan dose, PotDose pot)
    {
        var each = pot.Flow * (timer.On - dose.FillTime);
        return each > 0 ? pot.Wanted * (timer.On + timer.Off) / each : double.PositiveInfinity;
    }
}
