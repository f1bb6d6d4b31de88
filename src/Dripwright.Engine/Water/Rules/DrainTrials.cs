using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Water;

/// <summary>What was seen to help a drain that runs too full.</summary>
internal enum DrainHelp
{
    /// <summary>Nothing that was tried.</summary>
    None,

    /// <summary>Less water in the reservoir, so that the outlet falls freely.</summary>
    Lower,

    /// <summary>A wider pipe.</summary>
    Wider,

    /// <summary>More slope.</summary>
    Steeper,

    /// <summary>An exit in the middle of the row.</summary>
    Middle,
}

/// <summary>Tries what would help a drain that runs too full, each by laying and solving the drains again.</summary>
/// <remarks>Only rigs with such a drain pay for it. What they are fed is taken to stay as it is.</remarks>
internal sealed class DrainTrials(Rig rig, RigLayout layout, FeedPlan feed, DrainPlan now)
{
    private static readonly double[] s_slopes = [1.0 / 96, 1.0 / 48, 1.0 / 32, 1.0 / 24];
    private static readonly string[] s_slopesUs = ["1/8 in per ft", "1/4 in per ft", "3/8 in per ft", "1/2 in per ft"];
    private static readonly string[] s_slopesMetric = ["1.1 %", "2.1 %", "3.2 %", "4.2 %"];

    /// <summary>The first change after which no drain is more than half full and no pot stands in water.</summary>
    public (DrainHelp Help, IReadOnlyList<Cure> Cures) Find()
    {
        foreach (var (help, changed, cure) in Changes())
        {
            if (Helps(changed))
            {
                return (help, RigCure.Offered(cure));
            }
        }

        return (DrainHelp.None, []);
    }

    private IEnumerable<(DrainHelp Help, Rig Changed, FieldChange Cure)> Changes()
    {
        var mouth = layout.Tank.Mouth.Z - (layout.Parts.Drain.InsideDiameter / 2);
        if (layout.Tank.Full > mouth)
        {
            var percent = (int)Math.Floor((mouth - layout.Tank.Floor) / layout.Parts.Tank.Height * 100);
            if (percent > 0 && layout.Tank.Floor + (percent / 100.0 * layout.Parts.Tank.Height) > layout.Tank.Lowest)
            {
                yield return (
                    DrainHelp.Lower,
                    rig with
                    {
                        Reservoir = rig.Reservoir with { Fill = percent / 100.0 },
                    },
                    RigCure.Text("reservoir.fill", $"{QuantityWords.Count(percent)} %")
                );
            }
        }

        var pipe = layout.Parts.Drain;
        foreach (
            var wider in layout
                .Parts.Catalogue.Pipes.Values.Where(p =>
                    p.Family == pipe.Family && p.InsideDiameter > pipe.InsideDiameter
                )
                .OrderBy(p => p.InsideDiameter)
                .Take(2)
        )
        {
            yield return (
                DrainHelp.Wider,
                rig with
                {
                    Drain = rig.Drain with { Pipe = wider.Key },
                },
                RigCure.Text("drain.pipe", wider.Key)
            );
        }

        var texts = rig.Units == UnitSystem.Us ? s_slopesUs : s_slopesMetric;
        foreach (var text in s_slopes.Zip(texts).Where(s => s.First > rig.Drain.Slope * 1.1).Select(s => s.Second))
        {
            yield return (
                DrainHelp.Steeper,
                rig with
                {
                    Drain = rig.Drain with { Slope = QuantityText.Parse(Dimension.Slope, text) },
                },
                RigCure.Text("drain.slope", text)
            );
        }

        if (rig.Drain.Exit == DrainExit.End)
        {
            yield return (
                DrainHelp.Middle,
                rig with
                {
                    Drain = rig.Drain with { Exit = DrainExit.Middle },
                },
                RigCure.Text("drain.exit", "middle")
            );
        }
    }

    private bool Helps(Rig changed)
    {
        if (RigLayout.TryOf(changed, layout.Parts.Catalogue) is not { } placed)
        {
            return false;
        }

        var then = new DrainPlanner(changed, placed, feed).Plan();
        return then.Runs.All(r => r.DeepestRatio <= RuleBook.Limit("drain-half-full"))
            && then.Pots.All(p => p.PondingPots.Count == 0)
            && then.MouthOverRim >= Math.Min(-1e-6, now.MouthOverRim)
            && placed.Rows.All(r =>
                r.Drain.Path.Min(p => p.Z) - (placed.Parts.Drain.OutsideDiameter / 2) >= r.Floor - 1e-6
            );
    }
}
