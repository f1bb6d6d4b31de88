using Dripwright.Engine.Layout;

namespace Dripwright.Engine.Stands.Frame;

/// <summary>One tube of the stand in the frame model.</summary>
/// <param name="Name">What to call it: its label, frame and side.</param>
/// <param name="Member">The tube as the layout has it.</param>
/// <param name="Elements">Its elements, from its start to its end.</param>
/// <param name="SocketAtStart">True where its start sits in a printed socket.</param>
/// <param name="SocketAtEnd">True where its end sits in a printed socket.</param>
public sealed record StandTube(
    string Name,
    StandMember Member,
    IReadOnlyList<int> Elements,
    bool SocketAtStart,
    bool SocketAtEnd
)
{
    /// <summary>[m] From joint centre to joint centre.</summary>
    public double Span => Member.From.DistanceTo(Member.To);
}
