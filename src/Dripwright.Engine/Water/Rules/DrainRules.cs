using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Water;

/// <summary>Judges the drains.</summary>
internal sealed class DrainRules(Rig rig, RigLayout layout, FeedPlan feed, DrainPlan drain, Judgement judge)
{
    public void Judge()
    {
        Fullness();
        Slope();
        Mouth();
        Pots();
        Bore();
        foreach (RowLayout row in layout.Rows)
        {
            double lowest = row.Drain.Path.Min(p => p.Z) - (layout.Parts.Drain.OutsideDiameter / 2);
            if (lowest < row.Floor - 1e-6)
            {
                judge.Add(
                    "drain-under-floor",
                    $"drain of row {QuantityWords.Count(row.Number)}",
                    $"rows[{QuantityWords.Count(row.SpecIndex)}].standHeight",
                    "The drain would run under the floor.",
                    judge.Words.Length(row.Floor - lowest),
                    "above the floor",
                    "Raise the stand, or give the drain less slope."
                );
            }
        }
    }

    private void Fullness()
    {
        double half = RuleBook.Limit("drain-half-full");
        foreach (DrainRunPlan run in drain.Runs)
        {
            string place =
                run.Row > 0 ? $"drain {run.Run} of row {QuantityWords.Count(run.Row)}" : $"collector {run.Run}";
            if (run.Pressurised)
            {
                judge.Add(
                    "drain-full",
                    place,
                    "drain.pipe",
                    $"The drain runs full, {judge.Words.Length(Math.Abs(run.DeepestStation))} from the row's left end worst.",
                    "full",
                    $"at most {judge.Words.Share(half)} of the bore",
                    "Take a wider pipe, more slope, or let it leave from the middle."
                );
            }
            else if (run.DeepestRatio > half)
            {
                judge.Add(
                    "drain-half-full",
                    place,
                    "drain.pipe",
                    "The drain runs over half full.",
                    judge.Words.Share(run.DeepestRatio),
                    $"at most {judge.Words.Share(half)}",
                    "Take a wider pipe, more slope, or let it leave from the middle."
                );
            }
        }
    }

    private void Slope()
    {
        double least = RuleBook.Limit("drain-level");
        double most = RuleBook.Limit("drain-steep");
        if (rig.Drain.Slope < least * (1 - 1e-9))
        {
            judge.Add(
                "drain-level",
                "drains",
                "drain.slope",
                "The drain has little fall: it runs deeper, roots and silt settle, and a sagging bench makes pools.",
                judge.Words.Slope(rig.Drain.Slope),
                $"at least {judge.Words.Slope(least)}",
                "Give it more slope and check it with a level when the pots are wet."
            );
        }
        else if (rig.Drain.Slope > most)
        {
            judge.Add(
                "drain-steep",
                "drains",
                "drain.slope",
                $"The slope costs {judge.Words.Length(drain.SlopeDrop)} of height.",
                judge.Words.Slope(rig.Drain.Slope),
                $"at most {judge.Words.Slope(most)}",
                "Take less slope and keep the height for the fall into the reservoir."
            );
        }
    }

    private void Mouth()
    {
        if (rig.Drain.Into == DrainTarget.CatchTank)
        {
            return;
        }

        if (drain.MouthOverRim < -1e-6)
        {
            judge.Add(
                "drain-under-rim",
                "reservoir",
                "rows[0].standHeight",
                $"The drain arrives {judge.Words.Length(-drain.MouthOverRim)} below the reservoir's rim; its slope takes {judge.Words.Length(drain.SlopeDrop)} of the height.",
                judge.Words.Length(drain.MouthOverRim),
                "over the rim",
                "Raise the stand, take a lower or sunk reservoir, or give the drain less slope."
            );
        }

        if (drain.Runs.Any(r => !r.FreeFall))
        {
            judge.Add(
                "drain-drowned",
                "reservoir",
                "reservoir.fill",
                "The drain's mouth lies under the reservoir's water: it backs up and cannot be seen running.",
                judge.Words.Length(layout.Tank.Full - layout.Tank.Mouth.Z),
                "above the water",
                "Keep the reservoir less full, or raise the drain."
            );
        }
    }

    private void Pots()
    {
        ILookup<int, PotFlow> flows = feed.Pots.ToLookup(p => p.Row);
        foreach (PotDrainPlan pot in drain.Pots)
        {
            string row = $"row {QuantityWords.Count(pot.Row)}";
            if (pot.PondingPots.Count > 0)
            {
                judge.Add(
                    "pots-pond",
                    $"{row}, pots {QuantityWords.Numbers(pot.PondingPots)}",
                    "drain.belowPots",
                    "Water from the drain backs up into these pots.",
                    $"{QuantityWords.Count(pot.PondingPots.Count)} pots",
                    "none",
                    "Hang the drain lower, take a wider pipe, or more slope."
                );
            }

            double most = flows[pot.Row].Max(p => p.Flow);
            double times = RuleBook.Limit("pot-drain-small");
            if (pot.MostFlow < most * times)
            {
                judge.Add(
                    "pot-drain-small",
                    row,
                    "drain.outlet",
                    "The pots' drain elbow takes little more than the pot is fed; a few roots in it and the pot spills.",
                    judge.Words.Flow(pot.MostFlow),
                    $"at least {judge.Words.Flow(most * times)}",
                    "Take a wider drain elbow."
                );
            }

            if (pot.SecondsToSpill > 0)
            {
                string first = pot.SpillsAtVent
                    ? "the vent runs over"
                    : $"pot {QuantityWords.Count(pot.FirstToSpill)} runs over";
                judge.Add(
                    "drain-blocked",
                    row,
                    "drain.vent",
                    $"Should the drain block at its low end while the pump runs, {first} first, after {judge.Words.Time(pot.SecondsToSpill)}.",
                    judge.Words.Time(pot.SecondsToSpill),
                    "know it",
                    "Look at the drain's mouth every day, and keep cords away from that place."
                );
            }
        }
    }

    private void Bore()
    {
        double times = RuleBook.Limit("drain-narrow");
        double feedBore = layout.Parts.Header.InsideDiameter;
        if (layout.Parts.Drain.InsideDiameter < times * feedBore * 0.98)
        {
            judge.Add(
                "drain-narrow",
                "drains",
                "drain.pipe",
                "The drain pipe is narrow beside the feed: roots and air locks stop it early.",
                $"{judge.Words.Length(layout.Parts.Drain.InsideDiameter)} bore",
                $"at least {judge.Words.Length(times * feedBore)}",
                "Take a wider drain pipe."
            );
        }

        if (!rig.Drain.Vent)
        {
            judge.Add(
                "drain-unvented",
                "drains",
                "drain.vent",
                "Without a vent at its high end the drain can lock with air.",
                "no vent",
                "open vent",
                "End the drain's high end in an open standpipe with a screen."
            );
        }
    }
}
