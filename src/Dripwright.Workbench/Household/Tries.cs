namespace Dripwright.Workbench.Household;

/// <summary>Wrong tries of a name. After five it rests, whether there is such a person or not, so that resting tells nothing.</summary>
internal sealed class Tries(TimeProvider time)
{
    public const int BeforeRest = 5;

    private const int Most = 10_000;
    private static readonly TimeSpan s_rest = TimeSpan.FromMinutes(5);

    private readonly Lock _turn = new();
    private readonly Dictionary<string, (int Wrong, DateTimeOffset Until)> _names = new(StringComparer.Ordinal);

    public bool IsResting(string name)
    {
        lock (_turn)
        {
            if (!_names.TryGetValue(name, out var tries) || tries.Wrong < BeforeRest)
            {
                return false;
            }

            if (tries.Until > time.GetUtcNow())
            {
                return true;
            }

            _names.Remove(name);
            return false;
        }
    }

    public void Wrong(string name)
    {
        lock (_turn)
        {
            if (_names.Count >= Most)
            {
                var now = time.GetUtcNow();
                foreach (var old in _names.Where(one => one.Value.Until <= now).Select(one => one.Key).ToList())
                {
                    _names.Remove(old);
                }

                if (_names.Count >= Most)
                {
                    // Somebody tries names by the thousand: then the limit of each address holds them.
                    _names.Clear();
                }
            }

            _names[name] = (_names.GetValueOrDefault(name).Wrong + 1, time.GetUtcNow() + s_rest);
        }
    }

    public void Right(string name)
    {
        lock (_turn)
        {
            _names.Remove(name);
        }
    }
}
