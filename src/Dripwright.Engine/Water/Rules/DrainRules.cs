using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
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
        Outlet();
        BacksUp();
        new PotDrainRules(feed, drain, OutletDrowned, judge).Judge();
        Bore();
        Vent();
        Floor();
    }

    private void Fullness()
    {
        var half = RuleBook.Limit("drain-half-full");
        List<DrainRunPlan> over = [.. drain.Runs.Where(r => r.Pressurised || r.DeepestRatio > half)];
        if (over.Count == 0)
        {
            return;
        }

        // One change for all of them: it was seen to leave every drain half full at most.
        (var help, var cures) = new DrainTrials(rig, layout, feed, drain).Find();
        var remedy = Phrase.Of($"finding.drain-full.{help}.remedy");
        foreach (var run in over)
        {
            if (run.Pressurised)
            {
                var deepest = Measured.Length(Math.Abs(run.DeepestStation));
                judge.Add(
                    "drain-full",
                    [Where(run)],
                    FieldsOf(help),
                    run.Row > 0
                        ? Phrase.Of("finding.drain-full.row.what", deepest)
                        : Phrase.Of("finding.drain-full.collector.what", deepest),
                    Phrase.Of("finding.drain-full.value"),
                    Phrase.Of("limit.at-most-full", Measured.Share(half)),
                    remedy,
                    cures
                );
            }
            else
            {
                judge.Add(
                    "drain-half-full",
                    [Where(run)],
                    FieldsOf(help),
                    Phrase.Of("finding.drain-half-full.what"),
                    Phrase.Of("finding.drain-half-full.value", Measured.Share(run.DeepestRatio)),
                    Phrase.Of("limit.at-most-full", Measured.Share(half)),
                    remedy,
                    cures
                );
            }
        }
    }

    private static IReadOnlyList<string> FieldsOf(DrainHelp help) =>
        help switch
        {
            DrainHelp.Lower => ["reservoir.fill", "reservoir.tank", "rows[0].standHeight"],
            DrainHelp.Wider => ["drain.pipe", "drain.exit"],
            DrainHelp.Steeper => ["drain.slope", "drain.exit"],
            DrainHelp.Middle => ["drain.exit"],
            _ => ["drain.pipe", "drain.exit", "feed.emitter", "rows[0].standHeight"],
        };

    /// <summary>Drains that do not fall freely into the next pipe, though the last one falls freely into the reservoir.</summary>
    private void BacksUp()
    {
        List<DrainRunPlan> backed = [.. drain.Runs.Where(r => !r.FreeFall)];
        if (backed.Count > 0 && !OutletDrowned)
        {
            judge.Add(
                "drain-backs-up",
                [.. backed.Select(Where)],
                ["drain.pipe", "drain.slope"],
                Phrase.Of("finding.drain-backs-up.what"),
                Phrase.Of("finding.drain-backs-up.value"),
                Phrase.Of("finding.drain-drowned.limit"),
                Phrase.Of("finding.drain-backs-up.remedy")
            );
        }
    }

    private bool OutletDrowned =>
        rig.Drain.Into == DrainTarget.Reservoir
        && layout.Tank.Full > layout.Tank.Mouth.Z - (layout.Parts.Drain.InsideDiameter / 2);

    // A drain that leaves from its middle is told as two halves, "D1 left" and "D1 right".
    private static Place Where(DrainRunPlan run)
    {
        if (run.Row == 0)
        {
            return new Place(Phrase.Of("place.collector", run.Run), Run: run.Run);
        }

        var name = run.Half switch
        {
            DrainHalf.Left => Phrase.Of("place.drain-left", run.Row, run.Label),
            DrainHalf.Right => Phrase.Of("place.drain-right", run.Row, run.Label),
            _ => Phrase.Of("place.drain", run.Row, run.Label),
        };
        return new Place(name, run.Row, Run: run.Label);
    }

    private void Slope()
    {
        var least = RuleBook.Limit("drain-level");
        var most = RuleBook.Limit("drain-steep");
        if (rig.Drain.Slope < least * (1 - 1e-9))
        {
            judge.Add(
                "drain-level",
                [Place.Drains],
                ["drain.slope"],
                Phrase.Of("finding.drain-level.what"),
                Phrase.Of(Measured.Slope(rig.Drain.Slope)),
                Limit.AtLeast(Measured.Slope(least)),
                Phrase.Of("finding.drain-level.remedy"),
                RigCure.Offered(RigCure.Text("drain.slope", "1 %"))
            );
        }
        else if (rig.Drain.Slope > most)
        {
            judge.Add(
                "drain-steep",
                [Place.Drains],
                ["drain.slope"],
                Phrase.Of("finding.drain-steep.what", Measured.Length(drain.SlopeDrop)),
                Phrase.Of(Measured.Slope(rig.Drain.Slope)),
                Limit.AtMost(Measured.Slope(most)),
                Phrase.Of("finding.drain-steep.remedy"),
                RigCure.Offered(RigCure.Text("drain.slope", "4 %"))
            );
        }
    }

    private void Outlet()
    {
        if (rig.Drain.Into == DrainTarget.CatchTank)
        {
            return;
        }

        if (drain.MouthOverRim < -1e-6)
        {
            var below = Measured.Length(-drain.MouthOverRim);
            judge.Add(
                "drain-under-rim",
                [Place.Reservoir],
                ["rows[0].standHeight", "reservoir.base", "drain.slope"],
                Phrase.Of("finding.drain-under-rim.what", below, Measured.Length(drain.SlopeDrop)),
                Phrase.Of("finding.drain-under-rim.value", below),
                Phrase.Of("finding.drain-under-rim.limit"),
                Phrase.Of("finding.drain-under-rim.remedy"),
                Raised(-drain.MouthOverRim)
            );
        }

        if (OutletDrowned)
        {
            var under = layout.Tank.Full - layout.Tank.Mouth.Z;
            judge.Add(
                "drain-drowned",
                [Place.Reservoir],
                ["reservoir.fill", "rows[0].standHeight"],
                Phrase.Of("finding.drain-drowned.what"),
                under > 0
                    ? Phrase.Of("finding.drain-drowned.value", Measured.Length(under))
                    : Phrase.Of("finding.drain-drowned.partly.value"),
                Phrase.Of("finding.drain-drowned.limit"),
                Phrase.Of("finding.drain-drowned.remedy")
            );
        }
    }

    // All rows together: the drains that are joined keep their heights to one another.
    private IReadOnlyList<Cure> Raised(double by) =>
        RigCure.Offered([.. rig.Rows.Select((row, i) => RigCure.LengthUp(rig, StandHeight(i), row.StandHeight + by))]);

    private static string StandHeight(int spec) => $"rows[{QuantityWords.Count(spec)}].standHeight";

    private void Bore()
    {
        var least = RuleBook.Limit("drain-narrow") * layout.Parts.Header.InsideDiameter;
        var pipe = layout.Parts.Drain;
        if (pipe.InsideDiameter >= least * 0.98)
        {
            return;
        }

        var wider = layout
            .Parts.Catalogue.Pipes.Values.Where(p => p.Family == pipe.Family && p.InsideDiameter >= least * 0.98)
            .OrderBy(p => p.InsideDiameter)
            .ThenBy(p => p.Key, StringComparer.Ordinal)
            .FirstOrDefault();
        judge.Add(
            "drain-narrow",
            [Place.Drains],
            ["drain.pipe"],
            Phrase.Of("finding.drain-narrow.what"),
            Phrase.Of("finding.drain-narrow.value", Measured.Length(pipe.InsideDiameter)),
            Limit.AtLeast(Measured.Length(least)),
            Phrase.Of("finding.drain-narrow.remedy"),
            RigCure.Offered(wider is null ? null : RigCure.Text("drain.pipe", wider.Key))
        );
    }

    private void Vent()
    {
        if (!rig.Drain.Vent)
        {
            judge.Add(
                "drain-unvented",
                [Place.Drains],
                ["drain.vent"],
                Phrase.Of("finding.drain-unvented.what"),
                Phrase.Of("finding.drain-unvented.value"),
                Phrase.Of("finding.drain-unvented.limit"),
                Phrase.Of("finding.drain-unvented.remedy"),
                RigCure.Offered(RigCure.Yes("drain.vent"))
            );
        }
    }

    private void Floor()
    {
        foreach (var row in layout.Rows)
        {
            var lowest = row.Drain.Path.Min(p => p.Z) - (layout.Parts.Drain.OutsideDiameter / 2);
            if (lowest < row.Floor - 1e-6)
            {
                var under = row.Floor - lowest;
                judge.Add(
                    "drain-under-floor",
                    [
                        new Place(
                            Phrase.Of("place.drain", row.Number, row.Drain.Label),
                            row.Number,
                            Run: row.Drain.Label
                        ),
                    ],
                    [StandHeight(row.SpecIndex), "drain.slope", "drain.belowPots"],
                    Phrase.Of("finding.drain-under-floor.what"),
                    Phrase.Of("finding.drain-under-floor.value", Measured.Length(under)),
                    Phrase.Of("finding.drain-under-floor.limit"),
                    Phrase.Of("finding.drain-under-floor.remedy"),
                    RigCure.Offered(RigCure.LengthUp(rig, StandHeight(row.SpecIndex), row.Spec.StandHeight + under))
                );
            }
        }
    }
}
