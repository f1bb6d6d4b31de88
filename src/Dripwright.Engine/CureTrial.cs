using Dripwright.Engine.Files;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine;

/// <summary>A cure that was tried: the rig changed, planned anew, and what the new plan has to say.</summary>
/// <param name="After">The plan of the changed rig; null where the change makes no rig.</param>
/// <param name="Faults">Why it makes none; empty where it does.</param>
/// <param name="Cured">True where the finding it was offered for is gone from all its places.</param>
/// <param name="Gone">What the first plan said and the new one does not, the gravest first.</param>
/// <param name="New">What the new plan says and the first one did not, the gravest first.</param>
public sealed record CureTrial(
    Plan? After,
    IReadOnlyList<Fault> Faults,
    bool Cured,
    IReadOnlyList<Finding> Gone,
    IReadOnlyList<Finding> New
)
{
    /// <summary>Tries a cure. It takes as long as planning the rig.</summary>
    /// <param name="plan">The plan that has the finding.</param>
    /// <param name="finding">The finding.</param>
    /// <param name="cure">A cure; what is to be done by hand changes no plan.</param>
    /// <param name="options">What the first plan was computed with; the defaults where null.</param>
    /// <exception cref="ArgumentException">The cure names a field that the rig does not have.</exception>
    /// <exception cref="OperationCanceledException">The options' stop was asked for.</exception>
    public static CureTrial Of(Plan plan, Finding finding, Cure cure, PlanOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(cure);
        var catalogue = plan.Layout.Parts.Catalogue;
        var reading = RigCure.Applied(plan.Rig, cure, catalogue);
        if (reading.Resolved is not { } changed)
        {
            return new CureTrial(null, reading.Faults, false, [], []);
        }

        var after = Planner.Of(changed, plan.Assumed, options);
        return new CureTrial(
            after,
            [],
            !after.Findings.Any(f => finding.IsSaidBy(f)),
            [.. plan.Findings.Where(f => !after.Findings.Any(a => f.IsSaidBy(a)))],
            [.. after.Findings.Where(f => !plan.Findings.Any(b => f.IsSaidBy(b)))]
        );
    }
}
