namespace Dripwright.Engine.Chemistry.Formulas;

/// <summary>
/// How much of each constituent one cubic metre of a solution holds, in mol/m³ (the same number as mmol/L). Also used for
/// what one kilogram of a salt brings, then in mol/kg: the two multiply to a concentration.
/// </summary>
/// <remarks>Values are never negative in a solution; a difference of two compositions may be.</remarks>
public sealed class Composition : IEquatable<Composition>
{
    private static readonly Constituent[] s_every = Enum.GetValues<Constituent>();
    private readonly double[] _amounts;

    private Composition(double[] amounts) => this._amounts = amounts;

    /// <summary>Pure water: nothing of anything.</summary>
    public static Composition Nothing { get; } = new(new double[s_every.Length]);

    /// <summary>All constituents, in the order in which they are listed.</summary>
    public static IReadOnlyList<Constituent> Constituents => s_every;

    /// <summary>[mol/m³] The amount of one constituent.</summary>
    public double this[Constituent constituent] => _amounts[(int)constituent];

    /// <summary>A composition of the given amounts; what is not named is absent, what is named twice is added up.</summary>
    /// <param name="amounts">[mol/m³] Each amount.</param>
    /// <exception cref="ArgumentOutOfRangeException">An amount is not a finite number.</exception>
    public static Composition Of(params IEnumerable<(Constituent Constituent, double Amount)> amounts)
    {
        ArgumentNullException.ThrowIfNull(amounts);
        var sums = new double[s_every.Length];
        foreach ((var constituent, var amount) in amounts)
        {
            if (!double.IsFinite(amount))
            {
                throw new ArgumentOutOfRangeException(
                    nameof(amounts),
                    amount,
                    $"{constituent} is not a finite number."
                );
            }
            sums[(int)constituent] += amount;
        }
        return new Composition(sums);
    }

    /// <summary>The same composition with one constituent set to another amount.</summary>
    /// <param name="constituent">Which one.</param>
    /// <param name="amount">[mol/m³] What it is set to.</param>
    public Composition With(Constituent constituent, double amount)
    {
        var copy = (double[])_amounts.Clone();
        copy[(int)constituent] = amount;
        return new Composition(copy);
    }

    /// <summary>Sum, constituent by constituent.</summary>
    public static Composition operator +(Composition a, Composition b) => a.Add(b);

    /// <summary>Difference, constituent by constituent.</summary>
    public static Composition operator -(Composition a, Composition b) => a.Add(b.Times(-1));

    /// <summary>Every amount times a factor.</summary>
    public static Composition operator *(Composition composition, double factor) => composition.Times(factor);

    /// <summary>Every amount times a factor.</summary>
    public static Composition operator *(double factor, Composition composition) => composition.Times(factor);

    /// <summary>Sum, constituent by constituent.</summary>
    public Composition Add(Composition other)
    {
        ArgumentNullException.ThrowIfNull(other);
        var sums = new double[s_every.Length];
        for (var i = 0; i < sums.Length; i++)
        {
            sums[i] = _amounts[i] + other._amounts[i];
        }
        return new Composition(sums);
    }

    /// <summary>Every amount times a factor.</summary>
    /// <param name="factor">[-] The factor.</param>
    public Composition Times(double factor)
    {
        var products = new double[s_every.Length];
        for (var i = 0; i < products.Length; i++)
        {
            products[i] = _amounts[i] * factor;
        }
        return new Composition(products);
    }

    /// <inheritdoc/>
    public bool Equals(Composition? other) => other is not null && _amounts.AsSpan().SequenceEqual(other._amounts);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Composition);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (var amount in _amounts)
        {
            hash.Add(amount);
        }
        return hash.ToHashCode();
    }
}
