using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Water;

/// <summary>Judges whether what fills the pots has air between two waterings, and water until the next.</summary>
internal sealed class MediumRules(Rig rig, RigLayout layout, DosePlan dose, DrainPlan drain, Judgement judge)
{
    public void Judge()
    {
        if (dose.Pots.Count == 0)
        {
            return;
        }

        foreach (var rows in layout.Rows.Where(r => dose.Pots.Any(p => p.Row == r.Number)).GroupBy(r => r.SpecIndex))
        {
            List<RowLayout> alike = [.. rows];
            NeverDrains(alike);
            Dries(alike);
        }
    }

    private PumpClock Clock => layout.Resolved.Clock;

    /// <summary>[s] Between two waterings of a day.</summary>
    private double Pause => Clock.Continuous ? 0 : rig.Timer.Off;

    private void NeverDrains(List<RowLayout> rows)
    {
        var medium = layout.MediumOf(rows[0]);
        if (Pause >= medium.Rest)
        {
            return;
        }

        judge.Add(
            "medium-never-drains",
            [.. rows.Select(r => Place.OfRow(r.Number))],
            Clock.Continuous ? ["timer.mode", "timer.off", Field(rows[0])] : ["timer.off", Field(rows[0])],
            Phrase.Of("finding.medium-never-drains.what", Phrase.Plain(medium.Name)),
            Clock.Continuous ? Phrase.Of("finding.medium-never-drains.value") : Phrase.Of(Measured.Time(Pause)),
            Limit.AtLeast(Measured.Time(medium.Rest)),
            Phrase.Of("finding.medium-never-drains.remedy", Measured.Time(medium.Rest)),
            Rested(medium.Rest)
        );
    }

    /// <summary>On and off in turn, with rest enough, and so long on that no pot lacks more than it does now.</summary>
    private IReadOnlyList<Cure> Rested(double rest)
    {
        var off = Math.Max(rest, Clock.Continuous ? rig.Timer.Off : 0);
        var timer = rig.Timer with { Mode = TimerMode.Cycle, Off = off };
        if (WateringTime.Minutes(timer, dose) is not { } least)
        {
            return [];
        }

        List<FieldChange> changes = [WateringTime.Minutes("timer.off", off)];
        if (Clock.Continuous)
        {
            changes.Insert(0, RigCure.Text("timer.mode", "cycle"));
        }

        if (timer.On < least)
        {
            changes.Add(WateringTime.On(least));
        }

        return RigCure.Offered([.. changes]);
    }

    private void Dries(List<RowLayout> rows)
    {
        var medium = layout.MediumOf(rows[0]);
        var row = rows[0];
        var numbers = rows.Select(r => r.Number).ToHashSet();
        var thirstiest = dose.Pots.Where(p => numbers.Contains(p.Row)).MaxBy(p => p.HotDay)!;
        // A plant drinks by day, which is when the clock waters.
        var drunk = thirstiest.HotDay * Math.Min(1, Pause / rig.Timer.HoursPerDay);
        var has = (medium.EasyWater * row.Pot.Volume) + drain.Pots[row.Number - 1].SumpVolume;
        var most = RuleBook.Limit("medium-dries") * has;
        if (Clock.Continuous || drunk <= most)
        {
            return;
        }

        var pause = Math.Floor(most / thirstiest.HotDay * rig.Timer.HoursPerDay / 60) * 60;
        judge.Add(
            "medium-dries",
            [.. rows.Select(r => Place.OfRow(r.Number))],
            ["timer.off", Field(row), $"rows[{Units.QuantityWords.Count(row.SpecIndex)}].pot"],
            Phrase.Of(
                "finding.medium-dries.what",
                Phrase.Plain(medium.Name),
                Measured.Volume(has),
                Measured.Volume(drunk)
            ),
            Phrase.Of(Measured.Volume(drunk)),
            Limit.AtMost(Measured.Volume(most)),
            Phrase.Of("finding.medium-dries.remedy", Measured.Time(Math.Max(60, pause))),
            pause >= Math.Max(60, medium.Rest) ? RigCure.Offered(WateringTime.Minutes("timer.off", pause)) : []
        );
    }

    private static string Field(RowLayout row) => $"rows[{Units.QuantityWords.Count(row.SpecIndex)}].medium";
}
