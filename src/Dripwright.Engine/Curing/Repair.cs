using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Curing;

/// <summary>Changes after which a rig has no stop and nothing to mend.</summary>
/// <param name="Cure">The changes.</param>
/// <param name="Rig">The changed rig.</param>
/// <param name="Plan">Its plan, whole but for the draws.</param>
public sealed record RepairedRig(Cure Cure, Rig Rig, Plan Plan)
{
    /// <summary>What its parts cost, as far as there are prices.</summary>
    public decimal Cost => Plan.Parts.Cost.Known;
}

/// <summary>What stood against every change that was tried.</summary>
/// <param name="Left">Stops and mends of the rig that came nearest, the gravest first.</param>
/// <param name="Nearest">The changes of that rig.</param>
/// <param name="Kept">Fields that were kept and that a change for one of these findings would have taken.</param>
public sealed record RepairConflict(IReadOnlyList<Finding> Left, Cure Nearest, IReadOnlyList<string> Kept);

/// <summary>How a rig is made to work.</summary>
/// <param name="Fewest">The answer that changes the fewest fields; null where none was found.</param>
/// <param name="Cheapest">The answer that costs least; the same as the first where no other costs less.</param>
/// <param name="Conflict">Where there is none, what conflicts.</param>
/// <param name="Tried">Changes that were tried.</param>
/// <param name="Complete">True where the search ended by itself; false where a bound or a stop ended it.</param>
public sealed record Repair(
    RepairedRig? Fewest,
    RepairedRig? Cheapest,
    RepairConflict? Conflict,
    int Tried,
    bool Complete
);
