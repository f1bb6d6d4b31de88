using Dripwright.Engine;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;

namespace Dripwright.Language.Report;

/// <summary>A cure in words.</summary>
/// <param name="Number">Number of its finding and of the cure there, both from 1: <c>2.1</c>.</param>
/// <param name="Changes">What changes in the rig file, in one line each.</param>
/// <param name="Steps">What is done by hand.</param>
public sealed record ToldCure(string Number, IReadOnlyList<string> Changes, IReadOnlyList<string> Steps);

/// <summary>A finding with its proven cures; with none it is something to look at.</summary>
/// <param name="Number">Its number in the plan, from 1.</param>
/// <param name="Finding">The finding.</param>
/// <param name="Cures">Its cures.</param>
public sealed record ToldCures(int Number, ToldFinding Finding, IReadOnlyList<ToldCure> Cures);

/// <summary>A key figure that a change moves.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Before">What it was.</param>
/// <param name="After">What it becomes.</param>
public sealed record FigureChange(string Name, string Before, string After);

/// <summary>A changed rig beside the one before, in words.</summary>
/// <param name="Changes">What changes in the rig file, in one line each.</param>
/// <param name="Steps">What is done by hand.</param>
/// <param name="Gone">Findings that go.</param>
/// <param name="New">Findings that come.</param>
/// <param name="Figures">Key figures that move.</param>
/// <param name="CostBefore">What the parts to buy cost before, as far as there are prices.</param>
/// <param name="CostAfter">The same after.</param>
/// <param name="Currency">Of the costs.</param>
/// <param name="BuyBefore">Items to buy before.</param>
/// <param name="BuyAfter">Items to buy after.</param>
public sealed record ToldChange(
    IReadOnlyList<string> Changes,
    IReadOnlyList<string> Steps,
    IReadOnlyList<ToldFinding> Gone,
    IReadOnlyList<ToldFinding> New,
    IReadOnlyList<FigureChange> Figures,
    decimal CostBefore,
    decimal CostAfter,
    string Currency,
    int BuyBefore,
    int BuyAfter
);

/// <summary>Makes words of cures and of what they do.</summary>
public static class CureWords
{
    /// <summary>Every finding of a plan with its cures.</summary>
    /// <param name="plan">A plan whose cures are proven.</param>
    public static IReadOnlyList<ToldCures> Of(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var words = new PlanWords(plan.Rig.Units);
        return
        [
            .. plan
                .Findings.Zip(words.Of(plan.Findings))
                .Select(
                    (both, index) =>
                        new ToldCures(
                            index + 1,
                            both.Second,
                            [.. both.First.Cures.Select((cure, c) => Of(plan, cure, $"{Number(index)}.{Number(c)}"))]
                        )
                ),
        ];
    }

    /// <summary>A cure in words.</summary>
    /// <param name="plan">The plan that has the finding.</param>
    /// <param name="cure">The cure.</param>
    /// <param name="number">Its number.</param>
    public static ToldCure Of(Plan plan, Cure cure, string number)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(cure);
        var changed = RigCure.Applied(plan.Rig, cure, plan.Layout.Parts.Catalogue).Rig;
        return new ToldCure(
            number,
            changed is null ? [] : Changes(plan.Rig, changed),
            [.. cure.Steps.Select(new PlanWords(plan.Rig.Units).Of)]
        );
    }

    /// <summary>The proven cure of a number such as <c>2.1</c>; null where there is none. Only its finding's cures are proven.</summary>
    /// <param name="plan">A plan.</param>
    /// <param name="number">The number.</param>
    /// <param name="prove">Gives the proven cures of a finding.</param>
    public static (Finding Finding, Cure Cure)? Find(Plan plan, string number, Func<Finding, IReadOnlyList<Cure>> prove)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(number);
        ArgumentNullException.ThrowIfNull(prove);
        foreach (var (f, finding) in plan.Findings.Index())
        {
            if (number.StartsWith($"{Number(f)}.", StringComparison.Ordinal))
            {
                foreach (var (c, cure) in prove(finding).Index())
                {
                    if (number == $"{Number(f)}.{Number(c)}")
                    {
                        return (finding, cure);
                    }
                }
            }
        }

        return null;
    }

    /// <summary>What a change does.</summary>
    /// <param name="before">The plan before.</param>
    /// <param name="after">The plan after.</param>
    /// <param name="cure">The change.</param>
    public static ToldChange Of(Plan before, Plan after, Cure cure)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        ArgumentNullException.ThrowIfNull(cure);
        var words = new PlanWords(before.Rig.Units);
        return new ToldChange(
            Changes(before.Rig, after.Rig),
            [.. cure.Steps.Select(words.Of)],
            words.Of([.. before.Findings.Where(f => !after.Findings.Any(f.IsSaidBy))]),
            words.Of([.. after.Findings.Where(f => !before.Findings.Any(f.IsSaidBy))]),
            Figures(PlanSummary.Of(before), PlanSummary.Of(after, before.Rig.Units)),
            before.Parts.Cost.Known,
            after.Parts.Cost.Known,
            after.Parts.Currency,
            before.Parts.Lines.Count(l => l.Buy > 0),
            after.Parts.Lines.Count(l => l.Buy > 0)
        );
    }

    private static List<string> Changes(Rig before, Rig after) =>
        [.. RigDifference.Of(before, after).Select(change => change.ToString())];

    private static List<FigureChange> Figures(PlanSummary before, PlanSummary after) =>
        [
            .. from was in before.Groups
            join now in after.Groups on was.Subject equals now.Subject
            from figure in was.Figures
            from then in now.Figures.Where(f => f.Name == figure.Name).Take(1)
            where then.Value != figure.Value
            select new FigureChange(figure.Name, figure.Value, then.Value),
        ];

    private static string Number(int index) => Engine.Units.QuantityWords.Count(index + 1);
}
