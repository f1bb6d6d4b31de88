using Microsoft.AspNetCore.Identity;

namespace Dripwright.Workbench.Household;

internal sealed partial class People
{
    /// <summary>A session that nobody uses for so long ends.</summary>
    public static readonly TimeSpan Idle = TimeSpan.FromDays(14);

    /// <summary>A session ends after this time in any case.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromDays(90);

    private const int MostSessions = 20;

    // How exactly it is kept when a session was used: each time it is noted the file is written.
    private static readonly TimeSpan s_noted = TimeSpan.FromMinutes(10);

    /// <summary>Told when somebody's sessions, keys or role may have changed.</summary>
    public event EventHandler? Changed;

    /// <summary>Begins a session of whom a name and passphrase fit. Null where they do not, or while the name rests.</summary>
    /// <returns>The secret of the session's cookie.</returns>
    public async Task<string?> Enter(string name, string passphrase, Visitor by, CancellationToken stop)
    {
        var person = Find(name);
        person = person?.Id == name ? null : person;
        var folded = NameFault(name) is null ? Folded(name) : "";
        var isResting = _tries.IsResting(folded);
        // The same work for a name that is known, that is not, and that rests: names cannot be tried out by the clock.
        var result = await Passphrases.Compare(person?.Passphrase, Short(passphrase), stop).ConfigureAwait(false);
        if (isResting || result == PasswordVerificationResult.Failed || person is null)
        {
            if (!isResting)
            {
                _tries.Wrong(folded);
            }

            // Only a name that somebody has is noted: people also type their passphrase into the field for it.
            Note(isResting ? DoorEvent.Resting : DoorEvent.Wrong, person?.Name ?? "", by);
            return null;
        }

        _tries.Right(folded);
        var again =
            result == PasswordVerificationResult.SuccessRehashNeeded
                ? await Passphrases.Hash(passphrase, stop).ConfigureAwait(false)
                : null;
        return Begin(person, again, by);
    }

    /// <summary>Begins a session of somebody who has just made an account.</summary>
    public string? Begin(string name, Visitor by) => Find(name) is { } person ? Begin(person, null, by) : null;

    /// <summary>Whose session it is; null where it has ended.</summary>
    /// <param name="secret">That of the cookie.</param>
    /// <param name="from">From where it is used now.</param>
    public (Person Person, Session Session)? OfSession(string secret, string? from)
    {
        var hash = HashOf(secret);
        foreach (var person in _file.All)
        {
            if (person.Sessions.FirstOrDefault(one => one.Hash == hash) is { } session)
            {
                if (!Holds(session))
                {
                    return null;
                }

                if (_time.GetUtcNow() - session.Seen > s_noted)
                {
                    Seen(person.Id, session.Id, from ?? session.From);
                }

                return (person, session);
            }
        }

        return null;
    }

    /// <summary>The role of whom a session belongs to, just now; null where it has ended.</summary>
    public Role? RoleOfSession(string id) =>
        _file.All.FirstOrDefault(person => person.Sessions.Any(one => one.Id == id && Holds(one)))?.Role;

    /// <summary>Ends a session.</summary>
    /// <param name="id">The session.</param>
    /// <param name="by">Who ends it.</param>
    /// <param name="owner">Whose it must be; anybody's where null.</param>
    public string? EndSession(string id, Visitor by, string? owner = null) =>
        End(person => owner is null || person.Id == owner, session => session.Id == id, by) ? null : "no-session";

    /// <summary>Ends all sessions of a person, or of everybody where null.</summary>
    public void EndSessions(string? person, Visitor by, string? except = null) =>
        End(one => person is null || one.Id == person, session => session.Id != except, by);

    private bool Holds(Session session)
    {
        var now = _time.GetUtcNow();
        return now - session.Seen < Idle && now - session.At < Longest;
    }

    private bool End(Func<Person, bool> whose, Func<Session, bool> which, Visitor by)
    {
        List<string> ended = [];
        _file.Change(all =>
        {
            ended = [.. all.Where(whose).Where(person => person.Sessions.Any(which)).Select(person => person.Name)];
            return ended.Count == 0
                ? null
                :
                [
                    .. all.Select(person =>
                        whose(person)
                            ? person with
                            {
                                Sessions = [.. person.Sessions.Where(one => !which(one))],
                            }
                            : person
                    ),
                ];
        });
        foreach (var name in ended)
        {
            Note(DoorEvent.Out, name, by);
        }

        if (ended.Count > 0)
        {
            Tell();
        }

        return ended.Count > 0;
    }

    private string? Begin(Person person, string? hash, Visitor by)
    {
        var secret = Random(32);
        var now = _time.GetUtcNow();
        var session = new Session(NewId(), HashOf(secret), now, now, by.From ?? "", by.Device ?? "");
        var isThere = false;
        _file.Change(all =>
        {
            // The passphrase may have been changed while this one was compared.
            isThere = all.Any(one => one.Id == person.Id && one.Passphrase == person.Passphrase);
            return isThere ? [.. all.Select(one => one.Id == person.Id ? With(one, session, hash) : one)] : null;
        });
        if (!isThere)
        {
            return null;
        }

        Note(DoorEvent.In, person.Name, by);
        return secret;
    }

    private Person With(Person person, Session session, string? hash) =>
        person with
        {
            Passphrase = hash ?? person.Passphrase,
            // The one that was not used for longest goes where there are too many.
            Sessions =
            [
                .. person.Sessions.Where(Holds).OrderByDescending(one => one.Seen).Take(MostSessions - 1),
                session,
            ],
        };

    private void Seen(string person, string id, string from)
    {
        var now = _time.GetUtcNow();
        try
        {
            _file.Change(all =>
                [
                    .. all.Select(one =>
                        one.Id == person
                            ? one with
                            {
                                Sessions =
                                [
                                    .. one.Sessions.Select(session =>
                                        session.Id == id ? session with { Seen = now, From = from } : session
                                    ),
                                ],
                            }
                            : one
                    ),
                ]
            );
        }
        catch (Store.Ground.GardenException)
        {
            // A full disk or a file under somebody's editor: when it was last used is not worth turning anybody away.
        }
    }

    private void Tell() => Changed?.Invoke(this, EventArgs.Empty);
}
