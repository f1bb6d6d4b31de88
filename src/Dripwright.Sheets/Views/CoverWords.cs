using Dripwright.Engine;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Water;

namespace Dripwright.Sheets.Views;

/// <summary>The job in one sentence, and its key figures in words.</summary>
internal sealed class CoverWords(Plan plan)
{
    private readonly Wording words = new(plan.Rig.Units);

    /// <summary>What is built, in one sentence.</summary>
    public string Job()
    {
        var rows = plan.Layout.Rows;
        var pots = rows.Sum(r => r.Pots.Count);
        var each = rows.Select(r => r.Pots.Count).Distinct().ToList();
        var crops = rows.SelectMany(r => r.Pots)
            .Where(p => p.Planted && p.Crop.Length > 0)
            .Select(p => p.Crop)
            .Distinct()
            .ToList();
        var what =
            rows.Count == 1 ? $"One row of {Wording.Counted(pots, "pot")}"
            : each.Count == 1
                ? $"{Wording.Counted(rows.Count, "row")} of {Wording.Counted(each[0], "pot")} each, {Wording.Count(pots)} in all"
            : $"{Wording.Counted(rows.Count, "row")} with {Wording.Counted(pots, "pot")} in all";
        var grown = crops.Count == 0 ? "" : $" for {Listed(crops)}";
        var water = words.Volume(plan.Reservoir.FullVolume);
        var how = plan.Layout.Parts.Pump is { } pump
            ? $"fed by a pump ({pump.Name}) from a reservoir filled with {water}"
            : $"fed by gravity from a raised reservoir filled with {water}";
        var back =
            plan.Rig.Drain.Into == DrainTarget.Reservoir
                ? "what drains runs back into it"
                : "what drains runs into a catch tank";
        return $"{what}{grown}, {how}; {back}.";
    }

    /// <summary>What, and how much.</summary>
    public IEnumerable<(string What, string Value)> KeyFigures()
    {
        var (feed, reservoir) = (plan.Feed, plan.Reservoir);
        var pots = plan.Layout.Rows.SelectMany(r => r.Pots).ToList();
        yield return (
            "Pots",
            $"{Wording.Count(pots.Count)}, of these {Wording.Count(pots.Count(p => p.Planted))} planted"
        );
        yield return (
            "Emitters",
            $"{Wording.Count(plan.Layout.Rows.Sum(r => r.Emitters.Count))}, {plan.Layout.Parts.Emitter.Name}"
        );
        if (feed is { Weakest: { } least, Strongest: { } most })
        {
            var mean = feed.Pots.Where(p => p.Planted).Average(p => p.Flow);
            yield return (
                "Flow per planted pot",
                $"{words.Flow(least.Flow)} least (row {Wording.Count(least.Row)}, pot {Wording.Count(least.Pot)}), {words.Flow(mean)} mean, {words.Flow(most.Flow)} most"
            );
        }

        if (feed.Evenness.Count > 0)
        {
            var even = feed.Evenness[0];
            yield return (
                "Evenness",
                $"{words.Share(even.Value)}, {even.Class.ToString().ToLowerInvariant()} ({even.Name})"
            );
        }

        yield return feed.WorkingPoint is { } point
            ? ("The pump works at", $"{words.Flow(point.Flow)} at {words.Length(point.Head)} of head")
            : ("Water over the emitters", words.Length(feed.StaticHead));
        if (plan.Drain.Runs.Count > 0)
        {
            var fullest = plan.Drain.Runs.MaxBy(r => r.DeepestRatio)!;
            yield return (
                "Drain at its fullest",
                $"{words.Share(fullest.DeepestRatio)} of its bore, run {fullest.Run}"
            );
        }

        yield return (
            "Back when the pump stops",
            $"{words.Volume(reservoir.BackInAll)} into {words.Volume(reservoir.Freeboard)} of room under the rim"
        );
        yield return reservoir.Days is { } days
            ? (
                "Water lasts in a hot week",
                $"{Wording.Number(days, "0.#")} days, {Wording.Counted(reservoir.Plants, "plant")} drinking {words.Flow(reservoir.Use)}"
            )
            : ("Water lasts in a hot week", "nothing drinks yet");
        foreach (var figure in Power(feed.WorkingPoint))
        {
            yield return figure;
        }

        yield return ("Water in the full reservoir weighs", words.Mass(reservoir.WaterMass));
    }

    private IEnumerable<(string What, string Value)> Power(WorkingPoint? point)
    {
        if (point is null)
        {
            yield break;
        }

        yield return (
            "Power and energy",
            $"{words.Power(point.Power)}, {Wording.Number(point.HoursPerDay, "0.#")}\u00a0h a day, {Wording.Number(point.EnergyPerDayKilowattHours, "0.##")}\u00a0kWh a day"
        );
    }

    private static string Listed(List<string> words) =>
        words.Count == 1 ? words[0] : $"{string.Join(", ", words.SkipLast(1))} and {words[^1]}";
}
