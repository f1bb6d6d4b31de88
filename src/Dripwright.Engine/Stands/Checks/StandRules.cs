using System.Globalization;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Physics;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Stands.Frame;
using Dripwright.Engine.Stands.Loads;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Stands.Checks;

/// <summary>Judges whether the stands hold.</summary>
internal sealed class StandRules(Rig rig, RigLayout layout, StandPlan plan, Judgement judge)
{
    private const int MostNamed = 4;

    public void Judge()
    {
        foreach (RowStand stand in plan.Rows)
        {
            string rows = RowsOf(stand);
            Falls(stand, rows);
            Strength(stand, rows);
            Joints(stand, rows);
            Sag(stand, rows);
            Pools(stand, rows);
            Tips(stand, rows);
            Feet(stand, rows);
        }

        Floor();
    }

    private string RowsOf(RowStand stand)
    {
        int[] numbers = [.. layout.Rows.Where(r => r.SpecIndex == stand.Frame.Row.SpecIndex).Select(r => r.Number)];
        return numbers.Length == 1
            ? $"row {QuantityWords.Count(numbers[0])}"
            : $"rows {QuantityWords.Numbers(numbers)}";
    }

    private string StiffeningField => rig.Stand.Bracing == Bracing.Both ? "stand.extraFrames" : "stand.bracing";

    private void Falls(RowStand stand, string rows)
    {
        if (stand.Fallen is { Fault: { } fault } fallen)
        {
            judge.Add(
                "stand-falls",
                rows,
                StiffeningField,
                $"The stand gives way. {fallen.Loads.Case.Name}: {Small(fault.Sentence)}",
                "falls",
                "stands",
                Remedy(stand)
            );
        }
        else if (stand.Buckling < RowStand.LeastBuckling)
        {
            judge.Add(
                "stand-falls",
                rows,
                StiffeningField,
                "The stand is near to swaying away under its load: little more weight and it folds up.",
                $"at {QuantityWords.Number(stand.Buckling.Value)} times its load",
                $"at {QuantityWords.Number(RowStand.LeastBuckling)} times at the soonest",
                Remedy(stand)
            );
        }
    }

    private void Strength(RowStand stand, string rows)
    {
        if (Worst(stand, u => Math.Max(u.Bending, u.Shear)) is { Value: > 1 } worst)
        {
            judge.Add(
                "stand-weak",
                $"{rows}, {worst.Tube.Name}",
                "stand.tube",
                $"The {Role(worst.Tube)} carries more than its steel may bear. {worst.Case.Loads.Case.Name}.",
                $"{judge.Words.Share(worst.Value)} used up",
                "at most 100 %",
                Remedy(stand)
            );
        }
    }

    private void Joints(RowStand stand, string rows)
    {
        if (Worst(stand, u => Math.Max(u.JointMoment, u.PullOut)) is { Value: > 1 } worst)
        {
            bool measured =
                worst.Use.JointMoment >= worst.Use.PullOut
                    ? rig.Stand.JointSlip is not null
                    : rig.Stand.JointPull is not null;
            string how = worst.Use.JointMoment >= worst.Use.PullOut ? "tilts" : "is pulled";
            judge.Add(
                "stand-joint-slips",
                $"{rows}, {worst.Tube.Name}",
                worst.Use.JointMoment >= worst.Use.PullOut ? "stand.jointSlip" : "stand.jointPull",
                $"The {Role(worst.Tube)} {how} out of its printed joint. {worst.Case.Loads.Case.Name}.",
                $"{judge.Words.Share(worst.Value)} of what the joint holds",
                "at most 100 %",
                (measured ? "" : "What a joint holds is assumed here: measure your own. ") + Remedy(stand)
            );
        }
    }

    private void Sag(RowStand stand, string rows)
    {
        if (stand.LargestSag > RowStand.MostSag)
        {
            judge.Add(
                "stand-sags",
                rows,
                "stand.extraFrames",
                "A rail sags so far between its frames that pots lean and the drain follows it down.",
                $"1/{Whole(1 / stand.LargestSag)} of its span",
                $"at most 1/{Whole(1 / RowStand.MostSag)}",
                Remedy(stand)
            );
        }
    }

    private void Pools(RowStand stand, string rows)
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
                $"drain of {rows}",
                "drain.slope",
                $"Between two hangers the full drain sags so far that it runs level or back: {judge.Words.Size(worst.PoolDepth)} of water stand in it.",
                $"{judge.Words.Slope(worst.LowestSlope)} left of {judge.Words.Slope(worst.LaidSlope)}",
                "more than level",
                "Put frames closer (stand.extraFrames), take a stiffer pipe or tube, or lay the drain steeper."
            );
        }
    }

    private void Tips(RowStand stand, string rows)
    {
        double least = RuleBook.Limit("stand-tips");
        CaseResult worst = stand.Cases.MinBy(c => c.Tip.Factor ?? double.PositiveInfinity)!;
        if (!rig.Stand.Tied && worst.Tip.Factor < least)
        {
            judge.Add(
                "stand-tips",
                rows,
                "stand.depth",
                $"The stand as a whole is easily tipped to the {(worst.Tip.ToFront ? "front" : "back")}. {worst.Loads.Case.Name}.",
                $"{QuantityWords.Number(worst.Tip.Factor.Value)} times what tips it",
                $"at least {QuantityWords.Number(least)} times",
                "Tie it to a wall or to the row behind and say so (stand.tied), make it deeper or lower, or keep people from leaning on it. "
                    + "Where children or the public pass, a professional looks at it first."
            );
        }
    }

    // A foot or two that lift for a moment, under a person or a dried-out row, are no matter: the stand is computed without
    // them. What matters is a load that stays, or so many feet that the stand rocks.
    private void Feet(RowStand stand, string rows)
    {
        double most = RuleBook.Limit("foot-lifts") * stand.Frame.Feet.Count;
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

        string[] feet = [.. worst.Solution!.Lifted.Select(n => stand.Frame.Model.Nodes[n].Name)];
        string more = feet.Length > MostNamed ? $" and {QuantityWords.Count(feet.Length - MostNamed)} more" : "";
        judge.Add(
            "foot-lifts",
            $"{rows}, {string.Join("; ", feet.Take(MostNamed))}{more}",
            StiffeningField,
            $"Feet come off the floor and the stand rocks. {worst.Loads.Case.Name}. It is computed without them and stands on.",
            $"{QuantityWords.Count(feet.Length)} of {QuantityWords.Count(stand.Frame.Feet.Count)} feet",
            "none under soaked pots, at most one in four otherwise",
            "Screw such feet to the floor or to a board, or let the legs' tubes be pinned into their feet."
        );
    }

    private static bool Lasts(StandCase load) => load.Lean == LeanPlace.None && load.Pots != PotsFull.Light;

    private void Floor()
    {
        double limit = RuleBook.Limit("floor-load");
        RowStand[] heavy = [.. plan.Rows.Where(r => r.Floor.Pressure > limit)];
        if (heavy.Length == 0)
        {
            return;
        }

        RowStand worst = heavy.MaxBy(r => r.Floor.Pressure)!;
        HashSet<int> kinds = [.. heavy.Select(r => r.Frame.Row.SpecIndex)];
        int[] numbers = [.. layout.Rows.Where(r => kinds.Contains(r.SpecIndex)).Select(r => r.Number)];
        judge.Add(
            "floor-load",
            numbers.Length == 1 ? RowsOf(worst) : $"rows {QuantityWords.Numbers(numbers)}",
            $"rows[{QuantityWords.Count(worst.Frame.Row.SpecIndex)}].spacing",
            $"With all pots soaked a row weighs {judge.Words.Mass(worst.Floor.Mass)} and presses more on its footprint than a room's floor is commonly made for. On a concrete slab on the ground this is no matter.",
            Load(worst.Floor.Pressure),
            Load(limit),
            "On an upper floor, a deck or a balcony ask the owner or an engineer; the local code decides."
        );
    }

    private string Load(double pascals) =>
        rig.Units == UnitSystem.Us
            ? string.Create(CultureInfo.InvariantCulture, $"{pascals / 47.880259:0} lb/ft²")
            : string.Create(CultureInfo.InvariantCulture, $"{pascals / StandardGravity.Value:0} kg/m²");

    private static string Remedy(RowStand stand)
    {
        string[] enough = [.. stand.Cures.Where(c => c.Enough).Select(Said)];
        if (enough.Length > 0)
        {
            return $"Computed as enough: {string.Join("; or ", enough)}.";
        }

        return stand.Cures.Count > 0
            ? $"Not enough by themselves: {string.Join("; ", stand.Cures.Select(Said))}. Lower the stand, shorten the modules or "
                + "put fewer pots on it."
            : "Brace it along and across, put frames closer, or take a stiffer tube.";
    }

    private static string Said(Cure cure)
    {
        string field = cure.Kind switch
        {
            CureKind.ThickerTube => "stand.tube",
            CureKind.ExtraFrame => "stand.extraFrames",
            CureKind.Brace => "stand.bracing",
            _ => "stand.extraFrames and stand.bracing",
        };
        string left = cure.Utilisation is { } use ? $", then {Whole(100 * use)} % used up" : "";
        return $"{cure.What} ({field}{left})";
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

    private static string Role(StandTube tube) =>
        tube.Member.Role == MemberRole.Cross ? "cross-member" : tube.Member.Role.ToString().ToLowerInvariant();

    private static string Small(string sentence) => char.ToLowerInvariant(sentence[0]) + sentence[1..];

    private static string Whole(double value) => value.ToString("0", CultureInfo.InvariantCulture);
}
