namespace Dripwright.Workbench.Household;

/// <summary>Somebody who may come in.</summary>
/// <param name="Id">Stays the same for good.</param>
/// <param name="Name">What they are called; no two are alike, whatever the case of the letters.</param>
/// <param name="Role">What they are.</param>
/// <param name="Passphrase">Its hash.</param>
/// <param name="MadeAt">When the account was made, UTC.</param>
/// <param name="Sessions">Where they are signed in.</param>
/// <param name="Keys">The keys for programs that they made.</param>
public sealed record Person(
    string Id,
    string Name,
    Role Role,
    string Passphrase,
    DateTimeOffset MadeAt,
    IReadOnlyList<Session> Sessions,
    IReadOnlyList<Key> Keys
);

/// <summary>A browser in which somebody is signed in.</summary>
/// <param name="Id">Names it in lists.</param>
/// <param name="Hash">SHA-256 of the secret in its cookie.</param>
/// <param name="At">When it began, UTC.</param>
/// <param name="Seen">When it was last used, UTC, to ten minutes.</param>
/// <param name="From">The address that it came from last.</param>
/// <param name="Device">What kind of browser and machine.</param>
public sealed record Session(
    string Id,
    string Hash,
    DateTimeOffset At,
    DateTimeOffset Seen,
    string From,
    string Device
);

/// <summary>A key for programs.</summary>
/// <param name="Id">Names it in lists.</param>
/// <param name="Label">What it is for.</param>
/// <param name="Hash">SHA-256 of the key.</param>
/// <param name="Role">What it may do; never more than the person who made it.</param>
/// <param name="MadeAt">When, UTC.</param>
/// <param name="EndsAt">From when on it opens nothing, UTC.</param>
public sealed record Key(string Id, string Label, string Hash, Role Role, DateTimeOffset MadeAt, DateTimeOffset EndsAt);
