namespace Dripwright.Engine.Rigs;

/// <summary>When the pump runs in a day.</summary>
/// <param name="Continuous">True where it never stops.</param>
/// <param name="Waterings">[-] Waterings a day; 1 where it never stops.</param>
/// <param name="HoursPerDay">[h] Hours it runs in a day.</param>
public sealed record PumpClock(bool Continuous, double Waterings, double HoursPerDay)
{
    /// <summary>[s] Seconds it runs in a day.</summary>
    public double SecondsPerDay => HoursPerDay * 3600;

    /// <summary>[s] Length of one watering; the whole day where it never stops.</summary>
    public double Watering => SecondsPerDay / Waterings;

    /// <summary>The clock of a timer: in the hours of the day in which it waters, on and off in turn.</summary>
    /// <param name="timer">The timer.</param>
    internal static PumpClock Of(Timer timer)
    {
        if (timer.Mode is TimerMode.Continuous)
        {
            return new PumpClock(true, 1, 24);
        }

        var waterings = timer.HoursPerDay / (timer.On + timer.Off);
        return new PumpClock(false, waterings, waterings * timer.On / 3600);
    }
}
