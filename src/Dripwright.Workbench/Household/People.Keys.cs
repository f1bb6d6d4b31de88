namespace Dripwright.Workbench.Household;

internal sealed partial class People
{
    /// <summary>Most days that a key holds.</summary>
    public const int MostKeyDays = 366;

    private const int MostKeys = 20;

    /// <summary>Makes a key for programs; it is told only now.</summary>
    /// <param name="person">Who makes it. It ends with their account.</param>
    /// <param name="label">What it is for.</param>
    /// <param name="role">What it may do.</param>
    /// <param name="days">How long it holds.</param>
    /// <param name="by">Who asks.</param>
    /// <returns>The key, or why there is none.</returns>
    public (string? Key, string? Why) MakeKey(string person, string label, Role role, int days, Visitor by)
    {
        label = label.Trim();
        if (NameFault(label) is not null)
        {
            return (null, "label");
        }

        if (days is < 1 or > MostKeyDays)
        {
            return (null, "days");
        }

        var key = "drip_" + Random(32);
        var now = _time.GetUtcNow();
        var made = new Key(NewId(), label, HashOf(key), role, now, now.AddDays(days));
        var why = Change(
            person,
            DoorEvent.Key,
            by,
            (_, one) => one.Keys.Count(other => other.EndsAt > now) >= MostKeys ? "keys" : null,
            // Keys that have ended by themselves go when another one comes.
            one => one with { Keys = [.. one.Keys.Where(other => other.EndsAt > now), made] },
            label
        );
        return why is null ? (key, null) : (null, why);
    }

    /// <summary>Ends a key.</summary>
    public string? EndKey(string id, Visitor by)
    {
        var label = "";
        return
            _file.All.FirstOrDefault(one => one.Keys.Any(key => key.Id == id)) is { } person
            && Change(
                person.Id,
                DoorEvent.KeyEnded,
                by,
                (_, one) =>
                    (label = one.Keys.FirstOrDefault(key => key.Id == id)?.Label ?? "").Length > 0 ? null : "no-key",
                one => one with { Keys = [.. one.Keys.Where(key => key.Id != id)] }
            )
                is null
            ? null
            : "no-key";
    }

    /// <summary>Whose key it is; null where it opens nothing (any more).</summary>
    public (Person Person, Key Key)? OfKey(string key)
    {
        var hash = HashOf(key);
        var now = _time.GetUtcNow();
        foreach (var person in _file.All)
        {
            if (person.Keys.FirstOrDefault(one => one.Hash == hash && one.EndsAt > now) is { } known)
            {
                return (person, known);
            }
        }

        return null;
    }

    /// <summary>What a key may do just now: never more than who made it. Null where it has ended.</summary>
    public Role? RoleOfKey(string id)
    {
        var now = _time.GetUtcNow();
        return
            _file.All.FirstOrDefault(one => one.Keys.Any(key => key.Id == id)) is { } person
            && person.Keys.First(key => key.Id == id) is { } found
            && found.EndsAt > now
            ? (Role)Math.Min((int)found.Role, (int)person.Role)
            : null;
    }

    /// <summary>A key was sent that opens nothing.</summary>
    public void NoteWrongKey(Visitor by) => Note(DoorEvent.WrongKey, "", by);
}
