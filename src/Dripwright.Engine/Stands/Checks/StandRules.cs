using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Stands.Frame;
using Dripwright.Engine.Stands.Loads;

namespace Dripwright.Engine.Stands.Checks;

/// <summary>Judges whether the stands hold.</summary>
internal sealed class StandRules(Rig rig, RigLayout layout, StandPlan plan, Judgement judge)
{
    private const int MostNamed = 4;

    private string StiffeningField => rig.Stand.Bracing == Bracing.Both ? "stand.extraFrames" : "stand.bracing";

    public void Judge()
    {
        foreach (var stand in plan.Rows)
        {
            Falls(stand);
            Walks(stand);
            Strength(stand);
            Joints(stand);
            Sag(stand);
            Pools(stand);
            Tips(stand);
            Feet(stand);
            Slips(stand);
        }

        Floor();
    }

    private int[] RowsOf(RowStand stand) =>
        [.. layout.Rows.Where(r => r.SpecIndex == stand.Frame.Row.SpecIndex).Select(r => r.Number)];

    private Place[] Rows(RowStand stand) => [.. RowsOf(stand).Select(Place.OfRow)];

    /// <summary>A part of the stand, in every row that has one like it.</summary>
    private Place[] Part(RowStand stand, object part)
    {
        var rows = RowsOf(stand);
        return
        [
            new Place(
                rows.Length == 1
                    ? Phrase.Of("place.in-row", rows[0], part)
                    : Phrase.Of("place.in-rows", new Numbers(rows), part),
                rows[0]
            ),
        ];
    }

    private void Falls(RowStand stand)
    {
        if (stand.Fallen is { Fault: { Kind: not FrameFaultKind.Walks } fault } fallen)
        {
            var tie = fault.Kind == FrameFaultKind.Tips && !rig.Stand.Tied;
            judge.Add(
                "stand-falls",
                Rows(stand),
                [StiffeningField, "stand.tube"],
                Phrase.Of(
                    "finding.stand-falls.fault.what",
                    fallen.Loads.Case.Name,
                    fault.Sentence(stand.Frame.Places[fault.Node])
                ),
                Phrase.Of("finding.stand-falls.fault.value"),
                Phrase.Of("finding.stand-falls.fault.limit"),
                tie
                    ? Phrase.Of("finding.stand-falls.tips.remedy", StandRemedy.Of(rig, stand))
                    : StandRemedy.Of(rig, stand),
                [.. tie ? RigCure.Offered(RigCure.Yes("stand.tied")) : [], .. StandRemedy.Cures(stand)]
            );
        }
        else if (stand.Buckling < RowStand.LeastBuckling)
        {
            judge.Add(
                "stand-falls",
                Rows(stand),
                [StiffeningField, "stand.tube"],
                Phrase.Of("finding.stand-falls.buckling.what"),
                Phrase.Of("finding.stand-falls.buckling.value", Measured.Number(stand.Buckling.Value)),
                Phrase.Of("finding.stand-falls.buckling.limit", Measured.Number(RowStand.LeastBuckling)),
                StandRemedy.Of(rig, stand),
                StandRemedy.Cures(stand)
            );
        }
    }

    private void Walks(RowStand stand)
    {
        if (stand.Fallen is not { Fault: { Kind: FrameFaultKind.Walks } fault } fallen)
        {
            return;
        }

        judge.Add(
            "stand-walks",
            Part(stand, Named(stand, fault.Feet)),
            ["stand.feet", "stand.floor", "stand.tied"],
            Phrase.Of(
                "finding.stand-walks.what",
                fallen.Loads.Case.Name,
                fault.Sentence(stand.Frame.Places[fault.Node])
            ),
            Phrase.Of("finding.stand-walks.value", Measured.Percent(fallen.SlideRatio)),
            Phrase.Of("finding.stand-walks.limit", Measured.Percent(stand.Frame.Options.Friction)),
            Phrase.Of("finding.stand-walks.remedy"),
            // Other feet help on some floors; a tie holds on any.
            rig.Stand.Tied
                ? []
                : RigCure.Offered(RigCure.Yes("stand.tied"))
        );
    }

    // Feet that have slipped a little have come to rest again: nothing falls, but the stand is not where it was.
    private void Slips(RowStand stand)
    {
        var most = RuleBook.Limit("feet-slip");
        var worst = stand.Cases.MaxBy(c => c.Slip)!;
        if (stand.Fallen is null && worst.Slip > most)
        {
            judge.Add(
                "feet-slip",
                Part(
                    stand,
                    Named(
                        stand,
                        [.. worst.Solution!.FootShifts.Where(f => f.Motion == FootMotion.Slips).Select(f => f.Node)]
                    )
                ),
                ["stand.feet", "stand.floor"],
                Phrase.Of("finding.feet-slip.what", worst.Loads.Case.Name),
                Phrase.Of(Measured.Size(worst.Slip)),
                Limit.AtMost(Measured.Size(most)),
                Phrase.Of("finding.feet-slip.remedy")
            );
        }
    }

    private static Phrase Named(RowStand stand, IReadOnlyList<int> feet)
    {
        if (feet.Count == 0)
        {
            return Phrase.Of("frame.node.foot");
        }

        var named = Phrase.Of(
            "place.named",
            new Several([.. feet.Take(MostNamed).Select(n => stand.Frame.Places[n])], Joint.Semicolon)
        );
        return feet.Count > MostNamed ? Phrase.Of("place.more", named, feet.Count - MostNamed) : named;
    }

    private void Strength(RowStand stand)
    {
        if (Worst(stand, u => Math.Max(u.Bending, u.Shear)) is { Value: > 1 } worst)
        {
            judge.Add(
                "stand-weak",
                Part(stand, worst.Tube.Name),
                ["stand.tube", StiffeningField],
                Phrase.Of("finding.stand-weak.what", worst.Tube.Role, worst.Case.Loads.Case.Name),
                Phrase.Of("finding.stand-weak.value", Measured.Percent(worst.Value)),
                Limit.AtMost(Measured.Percent(1)),
                StandRemedy.Of(rig, stand),
                StandRemedy.Cures(stand)
            );
        }
    }

    private void Joints(RowStand stand)
    {
        if (Worst(stand, u => Math.Max(u.JointMoment, u.PullOut)) is { Value: > 1 } worst)
        {
            var tilts = worst.Use.JointMoment >= worst.Use.PullOut;
            var measured = (tilts ? rig.Stand.JointSlip : rig.Stand.JointPull) is not null;
            var remedy = StandRemedy.Of(rig, stand);
            judge.Add(
                "stand-joint-slips",
                Part(stand, worst.Tube.Name),
                [tilts ? "stand.jointSlip" : "stand.jointPull", StiffeningField],
                Phrase.Of(
                    tilts ? "finding.stand-joint-slips.tilts.what" : "finding.stand-joint-slips.pulled.what",
                    worst.Tube.Role,
                    worst.Case.Loads.Case.Name
                ),
                Phrase.Of("finding.stand-joint-slips.value", Measured.Percent(worst.Value)),
                Limit.AtMost(Measured.Percent(1)),
                measured ? remedy : Phrase.Of("finding.stand-joint-slips.assumed.remedy", remedy),
                StandRemedy.Cures(stand)
            );
        }
    }

    private void Sag(RowStand stand)
    {
        if (stand.LargestSag > RowStand.MostSag)
        {
            judge.Add(
                "stand-sags",
                Rows(stand),
                ["stand.extraFrames", "stand.tube"],
                Phrase.Of("finding.stand-sags.what"),
                Phrase.Of("finding.stand-sags.value", (int)Math.Round(1 / stand.LargestSag)),
                Phrase.Of("finding.stand-sags.limit", (int)Math.Round(1 / RowStand.MostSag)),
                StandRemedy.Of(rig, stand),
                StandRemedy.Cures(stand)
            );
        }
    }

    private void Pools(RowStand stand)
    {
        DrainSettling[] pools =
        [
            .. stand
                .Cases.Select(c => c.Drain)
                .OfType<DrainSettling>()
                .Where(d => d is { LaidSlope: > 0, LowestSlope: <= 0 }),
        ];
        if (pools.MinBy(d => d.LowestSlope) is { } worst)
        {
            judge.Add(
                "drain-pools",
                [.. RowsOf(stand).Select(DrainOf)],
                ["stand.extraFrames", "drain.slope", "drain.pipe", "stand.tube"],
                Phrase.Of("finding.drain-pools.what", Measured.Size(worst.PoolDepth)),
                Phrase.Of(
                    "finding.drain-pools.value",
                    Measured.Slope(worst.LowestSlope),
                    Measured.Slope(worst.LaidSlope)
                ),
                Phrase.Of("finding.drain-pools.limit"),
                Phrase.Of("finding.drain-pools.remedy"),
                StandRemedy.Cures(stand)
            );
        }
    }

    private Place DrainOf(int row)
    {
        var run = layout.Rows[row - 1].Drain.Label;
        return new Place(Phrase.Of("place.drain", row, run), row, Run: run);
    }

    private void Tips(RowStand stand)
    {
        var least = RuleBook.Limit("stand-tips");
        var worst = stand.WorstTip;
        if (!rig.Stand.Tied && worst.Tip.Factor < least)
        {
            judge.Add(
                "stand-tips",
                Rows(stand),
                ["stand.tied", "stand.depth", LayoutRules.Field(stand.Frame.Row, "standHeight")],
                Phrase.Of(
                    worst.Tip.ToFront ? "finding.stand-tips.front.what" : "finding.stand-tips.back.what",
                    worst.Case.Name
                ),
                Phrase.Of("finding.stand-tips.value", Measured.Number(worst.Tip.Factor.Value)),
                Phrase.Of("finding.stand-tips.limit", Measured.Number(least)),
                Phrase.Of("finding.stand-tips.remedy"),
                RigCure.Offered(RigCure.Yes("stand.tied"))
            );
        }
    }

    // A foot or two that lift for a moment, under a person or a dried-out row, are no matter: the stand is computed without
    // them. What matters is a load that stays, or so many feet that the stand rocks.
    private void Feet(RowStand stand)
    {
        var most = RuleBook.Limit("foot-lifts") * stand.Frame.Feet.Count;
        CaseResult[] rocking =
        [
            .. stand.Cases.Where(c =>
                c.Solution is { Lifted.Count: > 0 } solution
                && (Lasts(c.Loads.Case) || solution.Lifted.Count > most + 1e-9)
            ),
        ];
        if (rocking.MaxBy(c => c.Solution!.Lifted.Count) is not { } worst)
        {
            return;
        }

        var lifted = worst.Solution!.Lifted;
        var named = new Several([.. lifted.Take(MostNamed).Select(n => stand.Frame.Places[n])], Joint.Semicolon);
        judge.Add(
            "foot-lifts",
            Part(stand, lifted.Count > MostNamed ? Phrase.Of("place.more", named, lifted.Count - MostNamed) : named),
            [StiffeningField],
            Phrase.Of("finding.foot-lifts.what", worst.Loads.Case.Name),
            Phrase.Of("finding.foot-lifts.value", lifted.Count, stand.Frame.Feet.Count, Measured.Size(worst.Lift)),
            Phrase.Of("finding.foot-lifts.limit"),
            Phrase.Of("finding.foot-lifts.remedy")
        );
    }

    private static bool Lasts(StandCase load) => load.Lean == LeanPlace.None && load.Pots != PotsFull.Light;

    private void Floor()
    {
        var limit = RuleBook.Limit("floor-load");
        RowStand[] heavy = [.. plan.Rows.Where(r => r.Floor.Pressure > limit)];
        if (heavy.Length == 0)
        {
            return;
        }

        var worst = heavy.MaxBy(r => r.Floor.Pressure)!;
        judge.Add(
            "floor-load",
            [.. heavy.SelectMany(RowsOf).Order().Select(Place.OfRow)],
            [LayoutRules.Field(worst.Frame.Row, "spacing")],
            Phrase.Of("finding.floor-load.row.what", Measured.Mass(worst.Floor.Mass)),
            Phrase.Of(Measured.FloorLoad(worst.Floor.Pressure)),
            Limit.AtMost(Measured.FloorLoad(limit)),
            Phrase.Of("finding.floor-load.row.remedy")
        );
    }

    private static (StandTube Tube, TubeUse Use, CaseResult Case, double Value)? Worst(
        RowStand stand,
        Func<TubeUse, double> value
    )
    {
        var all = stand.Cases.SelectMany(c => c.Uses, (c, u) => (Case: c, Use: u)).ToArray();
        if (all.Length == 0)
        {
            return null;
        }

        var (worst, use) = all.MaxBy(a => value(a.Use));
        return (stand.Frame.Tubes[use.Tube], use, worst, value(use));
    }
}
