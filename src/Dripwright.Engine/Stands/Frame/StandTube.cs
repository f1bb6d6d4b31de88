using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Stands.Frame;

/// <summary>One tube of the stand in the frame model.</summary>
/// <param name="Name">What to call it: its label, frame and side.</param>
/// <param name="Member">The tube as the layout has it.</param>
/// <param name="Elements">Its elements, from its start to its end.</param>
/// <param name="SocketAtStart">True where its start sits in a printed socket.</param>
/// <param name="SocketAtEnd">True where its end sits in a printed socket.</param>
public sealed record StandTube(
    Phrase Name,
    StandMember Member,
    IReadOnlyList<int> Elements,
    bool SocketAtStart,
    bool SocketAtEnd
)
{
    /// <summary>What it does, as a noun: "leg".</summary>
    public Phrase Role => RoleOf(Member.Role);

    /// <summary>[m] From joint centre to joint centre.</summary>
    public double Span => Member.From.DistanceTo(Member.To);

    internal static Phrase RoleOf(MemberRole role) => Phrase.Of($"stands.role.{role}");
}
