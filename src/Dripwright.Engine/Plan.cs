using Dripwright.Engine.Files;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Nutrients.Planning;
using Dripwright.Engine.Parts;
using Dripwright.Engine.Printed;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Stands.Checks;
using Dripwright.Engine.Water;
using Dripwright.Engine.Wires;

namespace Dripwright.Engine;

/// <summary>Everything computed from a rig. Never edited and never stored as truth: always computed anew.</summary>
public sealed record Plan
{
    /// <summary>The rig it was computed from, as it is written.</summary>
    public Rig Rig => Layout.Resolved.Rig;

    /// <summary>What the rig file did not say and the plan assumed.</summary>
    public required IReadOnlyList<Assumed> Assumed { get; init; }

    /// <summary>Everything in its place.</summary>
    public required RigLayout Layout { get; init; }

    /// <summary>The feed.</summary>
    public required FeedPlan Feed { get; init; }

    /// <summary>What each planted pot is given in a day.</summary>
    public required DosePlan Dose { get; init; }

    /// <summary>The drains.</summary>
    public required DrainPlan Drain { get; init; }

    /// <summary>The reservoir.</summary>
    public required ReservoirPlan Reservoir { get; init; }

    /// <summary>What hangs over the rows.</summary>
    public required CropWirePlan CropWire { get; init; }

    /// <summary>What the reservoir is filled with; null where no feed is asked for.</summary>
    public NutrientPlan? Nutrients { get; init; }

    /// <summary>Whether the stands hold; null where it was not asked.</summary>
    public StandPlan? Stand { get; init; }

    /// <summary>What is printed for the stands.</summary>
    public required PrintedParts Printed { get; init; }

    /// <summary>Parts, cuts and holes.</summary>
    public required PartsPlan Parts { get; init; }

    /// <summary>What the plan has to say, the gravest first.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
}
