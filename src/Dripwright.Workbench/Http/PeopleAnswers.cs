using Dripwright.Workbench.Household;

namespace Dripwright.Workbench.Http;

/// <summary>Somebody who may come in.</summary>
/// <param name="Id">For addresses; it stays the same.</param>
/// <param name="Name">What they are called.</param>
/// <param name="Role">visitor, helper, grower or owner.</param>
/// <param name="MadeAt">When the account was made.</param>
/// <param name="Sessions">In how many browsers they are signed in.</param>
/// <param name="Keys">How many keys they made.</param>
internal sealed record PersonAnswer(string Id, string Name, Role Role, DateTimeOffset MadeAt, int Sessions, int Keys)
{
    public static PersonAnswer Of(Person person) =>
        new(person.Id, person.Name, person.Role, person.MadeAt, person.Sessions.Count, person.Keys.Count);
}

/// <summary>Who is asking.</summary>
/// <param name="Name">Name that is written beside changes.</param>
/// <param name="Role">visitor, helper, grower or owner.</param>
internal sealed record MeAnswer(string Name, Role? Role);

/// <summary>A browser in which somebody is signed in.</summary>
internal sealed record SessionAnswer(
    string Id,
    string Name,
    DateTimeOffset At,
    DateTimeOffset Seen,
    string From,
    string Device
)
{
    public static IEnumerable<SessionAnswer> Of(Person person) =>
        person
            .Sessions.OrderByDescending(one => one.Seen)
            .Select(one => new SessionAnswer(one.Id, person.Name, one.At, one.Seen, one.From, one.Device));
}

/// <summary>A key for programs, without the key itself.</summary>
internal sealed record KeyAnswer(
    string Id,
    string Name,
    Role Role,
    string By,
    DateTimeOffset MadeAt,
    DateTimeOffset EndsAt
)
{
    public static IEnumerable<KeyAnswer> Of(Person person) =>
        person.Keys.Select(one => new KeyAnswer(one.Id, one.Label, one.Role, person.Name, one.MadeAt, one.EndsAt));
}

/// <summary>A new key. It is told only this once.</summary>
internal sealed record MadeKeyAnswer(string Key);

/// <summary>A code that lets one new person in, once, within a day.</summary>
internal sealed record CodeAnswer(string Code);

/// <summary>Somebody to add.</summary>
/// <param name="Name">One to sixty letters.</param>
/// <param name="Role">visitor, helper, grower or owner.</param>
/// <param name="Passphrase">A first one, fifteen letters or more.</param>
internal sealed record NewPerson(string? Name, Role? Role, string? Passphrase);

/// <summary>Another role.</summary>
internal sealed record NewRole(Role? Role);

/// <summary>A new passphrase for somebody.</summary>
internal sealed record NewPassphrase(string? Passphrase);

/// <summary>A new passphrase of one's own.</summary>
/// <param name="Current">The one that holds now.</param>
/// <param name="Passphrase">The new one, fifteen letters or more.</param>
internal sealed record OwnPassphrase(string? Current, string? Passphrase);

/// <summary>A key to make.</summary>
/// <param name="Name">What it is for.</param>
/// <param name="Role">What it may do; never more than who makes it.</param>
/// <param name="Days">How long it holds, 1 to 366; 90 where it is left out.</param>
internal sealed record NewKey(string? Name, Role? Role, int? Days);
