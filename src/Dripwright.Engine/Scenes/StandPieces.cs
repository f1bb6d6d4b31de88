using Dripwright.Engine.Layout;
using Dripwright.Engine.Printed;

namespace Dripwright.Engine.Scenes;

/// <summary>The tubes of the stands and what joins and hangs on them.</summary>
internal sealed class StandPieces(Plan plan, SceneDraft draft)
{
    /// <summary>[-] Outside of a printed joint over its tube's: walls of about a quarter of the tube all round.</summary>
    private const double JointOverTube = 1.5;

    public void Add()
    {
        var stand = plan.Layout.Stand;
        var half = stand.Tube.Outside / 2;
        var loads = new TubeLoads(plan);
        var counted = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var tube in stand.Members)
        {
            draft.Begin(
                new(Next("tube", tube.Label), SceneKind.Tube, SceneStage.Stand, tube.Label, tube.Row, 0)
                {
                    Utilisation = loads.Of(tube),
                }
            );
            draft.Rod(SceneMatter.Steel, tube.From, tube.To, half);
        }

        var numbers = PrintedJoints
            .Of(stand)
            .SelectMany(part => part.Joints.Select(joint => (joint, part.Number)))
            .DistinctBy(at => at.joint)
            .ToDictionary(at => at.joint, at => at.Number);
        foreach (var joint in stand.Joints.Where(joint => joint.Part != StandLayout.Hanger))
        {
            Begin(joint);
            draft.Block(SceneMatter.Print, joint.At, half * JointOverTube, half * JointOverTube, half * JointOverTube);
        }

        // A pipe that is tied straight to its tube has no hanger.
        foreach (var hanger in stand.Hangers.Where(hanger => hanger.Mount != HangerMount.Tie))
        {
            Begin(new StandJoint(StandLayout.Hanger, hanger.Row, hanger.At));
            draft.Rod(SceneMatter.Print, hanger.At, hanger.Pipe, half / 2);
        }

        void Begin(StandJoint joint)
        {
            var code = numbers.GetValueOrDefault(joint, StandLayout.ClampNumber);
            draft.Begin(new(Next("joint", code), SceneKind.Joint, SceneStage.Stand, code, joint.Row, 0));
        }

        string Next(string kind, string label)
        {
            counted[kind + label] = counted.GetValueOrDefault(kind + label) + 1;
            return SceneNames.Numbered(kind, label, counted[kind + label]);
        }
    }
}
