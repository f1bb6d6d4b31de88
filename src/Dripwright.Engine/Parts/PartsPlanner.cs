namespace Dripwright.Engine.Parts;

internal static class PartsPlanner
{
    public static PartsPlan Plan(Rigs.Rig rig, Layout.RigLayout layout) =>
        new([], [], [], [], [], [], new CostSum(0, 0, 0, false), "");
}
