using Dripwright.Engine.Findings;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Layout;

/// <summary>Judges where everything stands.</summary>
internal sealed class LayoutRules(Rig rig, RigLayout layout, Judgement judge)
{
    public void Judge()
    {
        foreach (var row in layout.Rows)
        {
            Pots(row);
            Modules(row);
            Stand(row);
        }

        Aisles();
        Room();
        Tank();
        Holes();
        Fittings();
        new SupplyRules(rig, layout, judge).Judge();
    }

    /// <summary>Path of a field of a row.</summary>
    public static string Field(RowLayout row, string name) => $"rows[{QuantityWords.Count(row.SpecIndex)}].{name}";

    private void Pots(RowLayout row)
    {
        if (row.Pots.Count < 2)
        {
            return;
        }

        var spec = row.Spec;
        var staggered = spec.Arrangement == Arrangement.Staggered;
        var least = row.Pot.Length;
        var given = spec.Spacing;
        if (staggered)
        {
            // Pots of one line stand two spacings apart; those of different lines may clear one another across or aslant.
            var clear =
                spec.LineDistance >= row.Pot.Width - 1e-6 ? 0
                : row.Pot.Round ? Math.Sqrt(Math.Max(0, Square(row.Pot.Length) - Square(spec.LineDistance)))
                : row.Pot.Length;
            least = Math.Max(row.Pots.Count > 2 ? row.Pot.Length / 2 : 0, clear);
        }

        if (given < least - 1e-6)
        {
            judge.Add(
                "pots-collide",
                [Place.OfRow(row.Number)],
                [Field(row, "spacing"), Field(row, "pot")],
                Phrase.Of("finding.pots-collide.what"),
                Phrase.Of(Measured.Length(given)),
                Limit.AtLeast(Measured.Length(least)),
                Phrase.Of("finding.pots-collide.remedy"),
                RigCure.Offered(RigCure.LengthUp(rig, Field(row, "spacing"), least))
            );
        }
    }

    private static double Square(double value) => value * value;

    private void Modules(RowLayout row)
    {
        var needed = ((row.Spec.Pots - 1) * row.Spec.Spacing) + row.Pot.Length;
        if (needed > row.Length + 1e-6)
        {
            judge.Add(
                "row-short",
                [Place.OfRow(row.Number)],
                [Field(row, "modules"), Field(row, "pots")],
                Phrase.Of("finding.row-short.what"),
                Phrase.Of(Measured.Length(row.Length)),
                Limit.AtLeast(Measured.Length(needed)),
                Phrase.Of("finding.row-short.remedy"),
                // Left out, the modules follow the pots.
                RigCure.Offered(new FieldChange(Field(row, "modules"), null))
            );
        }
    }

    private void Stand(RowLayout row)
    {
        var seat = RuleBook.Limit("stand-narrow") * row.Pot.Width;
        var depth = (row.Spec.Arrangement == Arrangement.Staggered ? row.Spec.LineDistance : 0) + seat;
        if (rig.Stand.Depth is { } given && given < depth - 1e-6)
        {
            judge.Add(
                "stand-narrow",
                [Place.OfRow(row.Number)],
                ["stand.depth"],
                Phrase.Of("finding.stand-narrow.what"),
                Phrase.Of(Measured.Length(given)),
                Limit.AtLeast(Measured.Length(depth)),
                Phrase.Of("finding.stand-narrow.remedy"),
                RigCure.Offered(new FieldChange("stand.depth", null))
            );
        }

        if (row.Spec.StandHeight > 0 && !layout.Stand.Members.Any(m => m.Row == row.Number))
        {
            judge.Add(
                "stand-too-low",
                [Place.OfRow(row.Number)],
                [Field(row, "standHeight")],
                Phrase.Of("finding.stand-too-low.what"),
                Phrase.Of(Measured.Length(row.Spec.StandHeight)),
                Limit.Over(Measured.Length(2 * layout.Parts.Tube.Outside)),
                Phrase.Of("finding.stand-too-low.remedy")
            );
        }
    }

    private void Aisles()
    {
        var least = RuleBook.Limit("aisle-narrow");
        foreach (var row in layout.Rows.Where(r => r.Spec.Aisle < least).DistinctBy(r => r.SpecIndex))
        {
            var field = Field(row, "aisle");
            judge.Add(
                "aisle-narrow",
                [new Place(Phrase.Of("place.aisle", row.Number), row.Number)],
                [field],
                Phrase.Of("finding.aisle-narrow.what"),
                Phrase.Of(Measured.Length(row.Spec.Aisle)),
                Limit.AtLeast(Measured.Length(least)),
                Phrase.Of("finding.aisle-narrow.remedy"),
                RigCure.Offered(RigCure.LengthUp(rig, field, least))
            );
        }
    }

    private void Room()
    {
        Compare("room-short", "site.roomLength", layout.LengthUsed, rig.Site.RoomLength);
        Compare("room-narrow", "site.roomWidth", layout.DepthUsed, rig.Site.RoomWidth);
        var highest = layout.Rows.Max(r => Math.Max(r.Base + r.Pot.Height, r.Feed[0].Path[0].Z) - r.Floor);
        Compare("room-low", "site.roomHeight", highest, rig.Site.RoomHeight);
    }

    private void Compare(string rule, string field, double needed, double given)
    {
        if (needed > given + 1e-6)
        {
            judge.Add(
                rule,
                [Place.Of("place.room")],
                [field],
                Phrase.Of($"finding.{rule}.what"),
                Phrase.Of(Measured.Length(given)),
                Limit.AtLeast(Measured.Length(needed)),
                Phrase.Of($"finding.{rule}.remedy")
            );
        }
    }

    private void Tank()
    {
        var tank = layout.Tank;
        foreach (var row in layout.Rows)
        {
            var alongside = tank.Right > row.OriginX + 1e-6 && tank.Left < row.OriginX + row.Length - 1e-6;
            var across = tank.Back > row.CentreY - (row.Depth / 2) && tank.Front < row.CentreY + (row.Depth / 2);
            var under = Math.Min(row.Base - layout.Parts.Tube.Outside, row.Drain.Path.Min(p => p.Z));
            if (alongside && across && tank.Rim > under)
            {
                judge.Add(
                    "tank-in-stand",
                    [
                        new Place(
                            Phrase.Of("place.reservoir-under-row", row.Number),
                            row.Number,
                            Part: PlacePart.Reservoir
                        ),
                    ],
                    ["reservoir.gap", "reservoir.tank", Field(row, "standHeight")],
                    Phrase.Of("finding.tank-in-stand.what"),
                    Phrase.Of(Measured.Length(tank.Rim)),
                    Limit.AtMost(Measured.Length(under)),
                    Phrase.Of("finding.tank-in-stand.remedy"),
                    PastTheEnd(row)
                );
            }
        }
    }

    // Past the end of the first row, beside which the reservoir is placed, and of any that reaches farther.
    private IReadOnlyList<Cure> PastTheEnd(RowLayout row)
    {
        var first = layout.Rows[0];
        var gap =
            rig.Reservoir.At == RowEnd.Left
                ? first.OriginX - row.OriginX
                : row.OriginX + row.Length - (first.OriginX + first.Length);
        return RigCure.Offered(RigCure.LengthUp(rig, "reservoir.gap", Math.Max(0, gap)));
    }

    private void Fittings()
    {
        foreach (var run in layout.Runs)
        {
            RunFitting[] breaks = [.. run.Fittings.Where(f => f.Interrupts)];
            for (var i = 1; i < breaks.Length; i++)
            {
                var room = (breaks[i].Station - breaks[i - 1].Station) * run.Stretch;
                var needed = breaks[i].Reach + breaks[i - 1].Reach;
                if (room < needed - 1e-6)
                {
                    judge.Add(
                        "fittings-crowd",
                        [
                            new Place(
                                Phrase.Of("place.fittings", breaks[i - 1].Label, breaks[i].Label, run.Label),
                                run.Row,
                                Run: run.Label
                            ),
                        ],
                        [run.Service is RunService.Feed ? "feed.entry" : "drain.exit"],
                        Phrase.Of("finding.fittings-crowd.what"),
                        Phrase.Of(Measured.Length(room)),
                        Phrase.Of("finding.fittings-crowd.limit", Measured.Length(needed)),
                        Phrase.Of("finding.fittings-crowd.remedy")
                    );
                }
            }
        }
    }

    private void Holes()
    {
        var runs = layout.Runs.ToDictionary(r => r.Label);
        foreach (var group in layout.Conflicts.GroupBy(c => c.With))
        {
            var worst = group.MaxBy(c => Math.Abs(c.Shift))!;
            var shift = Measured.Shift(Math.Abs(worst.Shift));
            var row = layout.Rows[runs[worst.Run].Row - 1];
            judge.Add(
                "hole-on-joint",
                [
                    .. group
                        .OrderBy(c => c == worst ? 0 : 1)
                        .Select(c => Place.OfHole(c.Run, c.Hole.Number, runs[c.Run].Row, c.Hole.Pot)),
                ],
                [Field(row, "spacing"), Field(row, "moduleLength"), "feed.emittersPerPot"],
                Phrase.Counted("finding.hole-on-joint.what", group.Count(), group.Key),
                worst.Shift == 0 ? Phrase.Of("finding.hole-on-joint.blocked.value") : Phrase.Of(shift),
                Phrase.Of("finding.hole-on-joint.limit"),
                worst.Shift == 0 ? Phrase.Of("finding.hole-on-joint.blocked.remedy")
                    : worst.Shift > 0 ? Phrase.Of("finding.hole-on-joint.right.remedy", shift)
                    : Phrase.Of("finding.hole-on-joint.left.remedy", shift)
            );
        }
    }
}
