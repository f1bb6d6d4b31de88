using System.Security.Claims;
using Dripwright.Store;

namespace Dripwright.Workbench.Household;

/// <summary>Who is asking, once it is known. What they may do is asked anew each time, so that it ends at once when it is taken away.</summary>
/// <param name="name">Name for the history; empty for this machine's own grower.</param>
/// <param name="role">The role just now; null where it has ended.</param>
internal sealed class Actor(string name, Func<Role?> role)
{
    /// <summary>Claim: the session's number.</summary>
    public const string SessionClaim = "session";

    /// <summary>Claim: the key's number.</summary>
    public const string KeyClaim = "key";

    /// <summary>Claim: the person's number.</summary>
    public const string PersonClaim = "person";

    /// <summary>Nobody who may do anything.</summary>
    public static Actor Nobody { get; } = new("", () => null);

    /// <summary>Whoever uses a workbench that asks nobody who they are.</summary>
    public static Actor Anybody { get; } = new("", () => Household.Role.Owner);

    /// <summary>Name for the history; empty for this machine's own grower.</summary>
    public string Name => name;

    /// <summary>The role just now; null where there is none.</summary>
    public Role? Role => role();

    /// <summary>The actor of somebody whom the door has let in.</summary>
    /// <param name="user">Whom it let in.</param>
    /// <param name="people">Who may come in.</param>
    /// <param name="pass">Who has come in from this machine.</param>
    public static Actor Of(ClaimsPrincipal user, People people, LocalPass? pass)
    {
        var named = user.Identity?.Name ?? "";
        return user.FindFirstValue(SessionClaim) is { } session
                ? new Actor(named, () => people.RoleOfSession(session) ?? pass?.RoleOf(session))
            : user.FindFirstValue(KeyClaim) is { } key ? new Actor(named, () => people.RoleOfKey(key))
            : Nobody;
    }

    /// <summary>Whether they have a right just now.</summary>
    public bool Has(Right right) => right == Right.Open || (Role is { } now && Access.Has(now, right));

    /// <summary>Their hand on the garden.</summary>
    public GardenHand Hand() => new(name, act => Has(Access.Of(act)));
}
