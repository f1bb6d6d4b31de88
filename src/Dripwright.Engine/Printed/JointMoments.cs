using Dripwright.Engine.Stands.Checks;
using Dripwright.Engine.Stands.Frame;
using Dripwright.Engine.Stands.Loads;

namespace Dripwright.Engine.Printed;

/// <summary>Moments that the stands' frames bring to their joints.</summary>
/// <remarks>Rows of one kind have stands alike, so the frame of one of them speaks for all.</remarks>
internal sealed class JointMoments
{
    private readonly Dictionary<(int Row, long X, long Y, long Z), double> _at = [];

    public JointMoments(StandPlan? strength)
    {
        foreach (var stand in strength?.Rows ?? [])
        {
            foreach (var result in stand.Cases)
            {
                if (result.Solution is { } solution)
                {
                    var share = result.Loads.Case.Lean == LeanPlace.None ? 1 : SocketStrength.LastingShare;
                    Add(stand.Frame, solution, share);
                }
            }
        }
    }

    /// <summary>[N·m] Greatest lasting moment at any of the joints that a part serves; 0 where none is known.</summary>
    public double Of(PrintedJoint place) =>
        place.Joints.Select(joint => _at.GetValueOrDefault(Key(joint.Row, joint.At))).DefaultIfEmpty(0).Max();

    private void Add(StandFrame frame, FrameSolution solution, double share)
    {
        foreach (var tube in frame.Tubes)
        {
            if (tube.SocketAtStart)
            {
                Note(tube.Member.From, solution.JointForces(tube.Elements[0], atEnd: false));
            }

            if (tube.SocketAtEnd)
            {
                Note(tube.Member.To, solution.JointForces(tube.Elements[^1], atEnd: true));
            }
        }

        void Note(Vector3 at, SectionForces forces)
        {
            var moment = share * forces.Bending;
            var key = Key(frame.Row.Number, at);
            _at[key] = Math.Max(_at.GetValueOrDefault(key), moment);
        }
    }

    // A tenth of a millimetre: joints are farther apart, rounding errors nearer.
    private static (int, long, long, long) Key(int row, Vector3 at) =>
        (row, (long)Math.Round(at.X * 1e4), (long)Math.Round(at.Y * 1e4), (long)Math.Round(at.Z * 1e4));
}
