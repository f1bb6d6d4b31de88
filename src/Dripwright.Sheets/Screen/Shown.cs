using Dripwright.Engine;
using Dripwright.Engine.Units;

namespace Dripwright.Sheets.Screen;

/// <summary>A plan shown in other units than the rig prefers.</summary>
public static class Shown
{
    /// <summary>
    /// The same plan with its figures in the given units: drawings, plots, tables and lists follow. The words of findings
    /// and parts were written when the plan was made and stay as they are; plan again to have them anew.
    /// </summary>
    /// <param name="plan">The plan.</param>
    /// <param name="units">Units to show; those of the rig where null.</param>
    public static Plan In(this Plan plan, UnitSystem? units)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return units is not { } wanted || wanted == plan.Rig.Units
            ? plan
            : plan with
            {
                Layout = plan.Layout with { Resolved = plan.Layout.Resolved.In(wanted) },
            };
    }
}
