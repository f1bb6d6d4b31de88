using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Layout;

/// <summary>Judges where everything stands, and the supply it hangs on.</summary>
internal sealed class LayoutRules(Rig rig, RigLayout layout, Judgement judge)
{
    public void Judge()
    {
        foreach (RowLayout row in layout.Rows)
        {
            Pots(row);
        }

        Aisles();
        Room();
        Tank();
        Holes();
        Fittings();
        Power();
        Rise();
    }

    private static string Field(RowLayout row, string name) => $"rows[{QuantityWords.Count(row.SpecIndex)}].{name}";

    private void Pots(RowLayout row)
    {
        string place = $"row {QuantityWords.Count(row.Number)}";
        Row spec = row.Spec;
        bool staggered = spec.Arrangement == Arrangement.Staggered;
        double along = staggered ? 2 * spec.Spacing : spec.Spacing;
        double diagonal = Math.Sqrt((spec.Spacing * spec.Spacing) + (spec.LineDistance * spec.LineDistance));
        bool collide =
            row.Pots.Count > (staggered ? 2 : 1) && along < row.Pot.Length - 1e-6
            || staggered
                && row.Pots.Count > 1
                && spec.Spacing < row.Pot.Length - 1e-6
                && spec.LineDistance < row.Pot.Width - 1e-6
                && (!row.Pot.Round || diagonal < row.Pot.Length - 1e-6);
        if (collide)
        {
            judge.Add(
                "pots-collide",
                place,
                Field(row, "spacing"),
                "The pots are larger than their spacing and would stand in one another.",
                judge.Words.Length(along),
                $"at least {judge.Words.Length(row.Pot.Length)}",
                "Space the pots wider, or take narrower pots."
            );
        }

        double needed = ((spec.Pots - 1) * spec.Spacing) + row.Pot.Length;
        if (needed > row.Length + 1e-6)
        {
            judge.Add(
                "row-short",
                place,
                Field(row, "modules"),
                "The row's modules are too short for its pots.",
                judge.Words.Length(row.Length),
                $"at least {judge.Words.Length(needed)}",
                "Add a module, or take fewer pots."
            );
        }

        double seat = RuleBook.Limit("stand-narrow") * row.Pot.Width;
        double depth = (staggered ? spec.LineDistance : 0) + seat;
        if (rig.Stand.Depth is { } given && given < depth - 1e-6)
        {
            judge.Add(
                "stand-narrow",
                place,
                "stand.depth",
                "The stand is too narrow for its pots: they overhang and can tip off.",
                judge.Words.Length(given),
                $"at least {judge.Words.Length(depth)}",
                "Leave the depth out, so that it follows the pots, or make it wider."
            );
        }

        if (spec.StandHeight > 0 && !layout.Stand.Members.Any(m => m.Row == row.Number))
        {
            judge.Add(
                "stand-too-low",
                place,
                Field(row, "standHeight"),
                "The stand is too low for legs; it is left out of the parts.",
                judge.Words.Length(spec.StandHeight),
                $"over {judge.Words.Length(2 * layout.Parts.Tube.Outside)}",
                "Raise it, or set the pots on blocks."
            );
        }
    }

    private void Aisles()
    {
        double least = RuleBook.Limit("aisle-narrow");
        foreach (RowLayout row in layout.Rows.Where(r => r.Spec.Aisle < least).DistinctBy(r => r.SpecIndex))
        {
            judge.Add(
                "aisle-narrow",
                $"in front of row {QuantityWords.Count(row.Number)}",
                Field(row, "aisle"),
                "The way is narrow for working with a bucket or lowering vines.",
                judge.Words.Length(row.Spec.Aisle),
                $"at least {judge.Words.Length(least)}",
                "Widen it, or set two rows back to back."
            );
        }
    }

    private void Room()
    {
        Compare("room-short", "site.roomLength", "length", layout.LengthUsed, rig.Site.RoomLength);
        Compare("room-narrow", "site.roomWidth", "width", layout.DepthUsed, rig.Site.RoomWidth);
        double highest = layout.Rows.Max(r => Math.Max(r.Base + r.Pot.Height, r.Feed[0].Path[0].Z) - r.Floor);
        Compare("room-low", "site.roomHeight", "height", highest, rig.Site.RoomHeight);
    }

    private void Compare(string rule, string field, string name, double needed, double given)
    {
        if (needed > given + 1e-6)
        {
            judge.Add(
                rule,
                "room",
                field,
                $"The rig needs more {name} than the room has.",
                judge.Words.Length(given),
                $"at least {judge.Words.Length(needed)}",
                "Take fewer or shorter rows, or another corner."
            );
        }
    }

    private void Tank()
    {
        TankPlace tank = layout.Tank;
        foreach (RowLayout row in layout.Rows)
        {
            bool alongside = tank.Right > row.OriginX + 1e-6 && tank.Left < row.OriginX + row.Length - 1e-6;
            bool across = tank.Back > row.CentreY - (row.Depth / 2) && tank.Front < row.CentreY + (row.Depth / 2);
            double under = Math.Min(row.Base - layout.Parts.Tube.Outside, row.Drain.Path.Min(p => p.Z));
            if (alongside && across && tank.Rim > under)
            {
                judge.Add(
                    "tank-in-stand",
                    $"reservoir under row {QuantityWords.Count(row.Number)}",
                    "reservoir.gap",
                    "The reservoir does not fit under the row.",
                    judge.Words.Length(tank.Rim),
                    $"at most {judge.Words.Length(under)}",
                    "Move it beyond the row's end, or take a lower one."
                );
            }
        }
    }

    private void Fittings()
    {
        foreach (PipeRun run in layout.Runs)
        {
            RunFitting[] breaks = [.. run.Fittings.Where(f => f.Interrupts)];
            for (int i = 1; i < breaks.Length; i++)
            {
                double room = (breaks[i].Station - breaks[i - 1].Station) * run.Stretch;
                double needed = breaks[i].Reach + breaks[i - 1].Reach;
                if (room < needed - 1e-6)
                {
                    judge.Add(
                        "fittings-crowd",
                        $"{breaks[i - 1].Label} and {breaks[i].Label} on {run.Label}",
                        run.Service is RunService.Feed ? "feed.entry" : "drain.exit",
                        "Two fittings stand closer than their sockets: no pipe goes between them.",
                        judge.Words.Length(room),
                        $"at least {judge.Words.Length(needed)}, centre to centre",
                        "Let the line enter or leave at the row's end, or make the row longer."
                    );
                }
            }
        }
    }

    private void Holes()
    {
        foreach (var group in layout.Conflicts.GroupBy(c => c.With))
        {
            HoleConflict worst = group.MaxBy(c => Math.Abs(c.Shift))!;
            string side = worst.Shift > 0 ? "right" : "left";
            string cure =
                worst.Shift == 0
                    ? "There is no clear place near it: change spacing, module length or emitters per pot."
                    : $"Shift the pot's hole by {judge.Words.Shift(Math.Abs(worst.Shift))} to the {side}, or change spacing or module length.";
            judge.Add(
                "hole-on-joint",
                $"run {worst.Run}, hole {QuantityWords.Count(worst.Hole.Number)} at pot {QuantityWords.Count(worst.Hole.Pot)}",
                "rows[0].spacing",
                $"{QuantityWords.Count(group.Count())} {(group.Count() == 1 ? "hole falls" : "holes fall")} on {group.Key}.",
                worst.Shift == 0 ? "no clear place" : judge.Words.Shift(Math.Abs(worst.Shift)),
                "clear of it",
                cure
            );
        }
    }

    private void Power()
    {
        if (layout.Parts.Pump is not { } pump)
        {
            return;
        }

        double load = (pump.Power + rig.Site.OtherLoads) / rig.Site.Voltage;
        double allowed = rig.Site.Breaker * RuleBook.Limit("circuit-load");
        if (load > allowed)
        {
            judge.Add(
                "circuit-load",
                "pump's circuit",
                "site.otherLoads",
                "The circuit carries too much for hours on end.",
                $"{QuantityWords.Number(load)} A",
                $"at most {QuantityWords.Number(allowed)} A",
                "Move lamps or heaters to another circuit; a licensed electrician decides."
            );
        }

        double needed = PumpCord.Needed(rig, layout, pump);
        if (pump.Cord < needed)
        {
            judge.Add(
                "cord-short",
                "pump",
                "site.outletDistance",
                "The pump's cord does not reach the outlet with a drip loop.",
                judge.Words.Length(pump.Cord),
                $"at least {judge.Words.Length(needed)}",
                "Have an outlet with ground-fault protection set nearer, or take a pump with a longer cord; do not plug cord into cord."
            );
        }

        if (rig.Site.OutletHeight < layout.Tank.Rim)
        {
            judge.Add(
                "outlet-low",
                "pump's outlet",
                "site.outletHeight",
                "The wall outlet lies below the reservoir's rim: an overflow or spray can reach it.",
                judge.Words.Length(rig.Site.OutletHeight),
                $"over {judge.Words.Length(layout.Tank.Rim)}",
                "Use an outlet higher up, ground-fault protected, with a drip loop in the cord; a licensed electrician decides."
            );
        }
    }

    private void Rise()
    {
        if (rig.Feed.Header.Rise is not { } stated)
        {
            return;
        }

        double real = layout.Rows[0].Feed[0].Path[0].Z - layout.Tank.PumpOutlet.Z;
        if (Math.Abs(stated - real) > RuleBook.Limit("rise-differs"))
        {
            judge.Add(
                "rise-differs",
                "header",
                "feed.header.rise",
                "The rise you give is not the one that stand, pots and line make; lifts are computed from the heights, the pipe's length from yours.",
                judge.Words.Length(stated),
                judge.Words.Length(real),
                "Leave the rise out, or correct the heights."
            );
        }
    }
}
