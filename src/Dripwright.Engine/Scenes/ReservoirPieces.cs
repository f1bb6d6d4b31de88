using Dripwright.Engine.Catalogue;

namespace Dripwright.Engine.Scenes;

/// <summary>The reservoir with its water, and the pump in it.</summary>
internal sealed class ReservoirPieces(Plan plan, SceneDraft draft)
{
    /// <summary>[m] Half a side of the block that stands for a pump.</summary>
    private const double PumpHalf = 0.06;

    public void Add()
    {
        var tank = plan.Layout.Tank;
        draft.Begin(new(SceneNames.Reservoir, SceneKind.Reservoir, SceneStage.Reservoir, "", 0, 0));
        var foot = new Vector3((tank.Left + tank.Right) / 2, (tank.Front + tank.Back) / 2, tank.Floor);
        var half = new SceneWidth((tank.Right - tank.Left) / 2, (tank.Back - tank.Front) / 2);
        var level = foot with { Z = tank.Full };
        switch (plan.Layout.Parts.Tank.Shape)
        {
            case TankShape.Lying:
                Lying(tank.Left, tank.Right, foot.Y, (tank.Rim - tank.Floor) / 2, tank.Floor, tank.Full);
                break;
            case TankShape.Upright:
                draft.Upright(SceneForm.Tub, SceneMatter.Reservoir, foot, tank.Rim - tank.Floor, half, half);
                Surface(SceneForm.Rod, level, half);
                break;
            default:
                draft.Upright(SceneForm.Crate, SceneMatter.Reservoir, foot, tank.Rim - tank.Floor, half, half);
                Surface(SceneForm.Block, level, half);
                break;
        }

        draft.Begin(
            new(SceneNames.Pump, SceneKind.Pump, SceneStage.Reservoir, "", 0, 0)
            {
                Flow = plan.Feed.OperatingPoint?.Flow,
            }
        );
        var outlet = tank.PumpOutlet;
        var size = plan.Layout.Parts.Pump is null ? PumpHalf / 2 : PumpHalf;
        draft.Block(SceneMatter.Pump, outlet, size, size, Math.Max(size / 2, (outlet.Z - tank.Floor) / 2));
    }

    // As thin as a sheet: only its upper face is seen.
    private void Surface(SceneForm form, Vector3 level, SceneWidth half)
    {
        var inside = new SceneWidth(half.X * 0.985, half.Y * 0.985);
        draft.Upright(form, SceneMatter.Solution, level - (0.004 * Vector3.Up), 0.004, inside, inside);
    }

    // A lying drum is closed, so its level is a band around it.
    private void Lying(double left, double right, double y, double radius, double floor, double full)
    {
        var axis = floor + radius;
        draft.Rod(SceneMatter.Reservoir, new(left, y, axis), new(right, y, axis), radius);
        var off = Math.Clamp(full - axis, -radius, radius);
        var chord = Math.Sqrt(Math.Max((radius * radius) - (off * off), 0)) + 0.002;
        draft.Block(SceneMatter.Solution, new((left + right) / 2, y, full), ((right - left) / 2) + 0.002, chord, 0.004);
    }
}
