namespace Dripwright.Engine.Water;

/// <summary>A stream of random numbers that is the same on every machine: one per draw, so cores cannot change a result.</summary>
/// <remarks>
/// SplitMix64: the state steps by a fixed odd number, the output is a mixing of it. Streams of one seed start at mixed
/// states; that two of 10⁵ streams of 10⁵ numbers overlap has a chance under 10⁻⁴.
/// Source: G. L. Steele, D. Lea, C. H. Flood, Fast splittable pseudorandom number generators, OOPSLA 2014.
/// Not the framework's own generator: its sequence is not promised from one version to the next.
/// </remarks>
internal struct RandomStream
{
    private const ulong Step = 0x9E3779B97F4A7C15UL;
    private ulong _state;
    private double _spare;
    private bool _hasSpare;

    public RandomStream(ulong seed, ulong stream)
    {
        // The stream number is mixed by itself first, so that (seed, stream + 1) is not (seed + 1, stream).
        _state = Mix(seed + Mix(unchecked((stream + 1) * Step)));
    }

    private RandomStream(ulong state) => _state = state;

    /// <summary>A stream whose state is the seed itself, as the generator is usually published.</summary>
    public static RandomStream FromState(ulong state) => new(state);

    public ulong NextBits()
    {
        _state = unchecked(_state + Step);
        return Mix(_state);
    }

    /// <summary>Evenly spread over 0 (included) to 1 (excluded).</summary>
    public double NextUnit() => (NextBits() >> 11) * (1.0 / (1UL << 53));

    /// <summary>Normal law with mean 0 and deviation 1, cut at ± <paramref name="cut"/> by drawing again.</summary>
    public double NextNormal(double cut)
    {
        while (true)
        {
            var value = NextNormal();
            if (Math.Abs(value) <= cut)
            {
                return value;
            }
        }
    }

    // Marsaglia's polar method: two normal numbers from one accepted point in the unit circle.
    private double NextNormal()
    {
        if (_hasSpare)
        {
            _hasSpare = false;
            return _spare;
        }

        while (true)
        {
            var x = 2 * NextUnit() - 1;
            var y = 2 * NextUnit() - 1;
            var square = x * x + y * y;
            if (square is > 0 and < 1)
            {
                var scale = Math.Sqrt(-2 * Math.Log(square) / square);
                _spare = y * scale;
                _hasSpare = true;
                return x * scale;
            }
        }
    }

    private static ulong Mix(ulong value)
    {
        unchecked
        {
            value = (value ^ (value >> 30)) * 0xBF58476D1CE4E5B9UL;
            value = (value ^ (value >> 27)) * 0x94D049BB133111EBUL;
            return value ^ (value >> 31);
        }
    }
}
