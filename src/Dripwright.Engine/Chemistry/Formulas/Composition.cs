namespace Dripwright.Engine.Chemistry.Formulas;

/// <summary>
/// How much of each constituent one cubic metre of a solution holds, in mol/m³ (the same number as mmol/L). Also used for
/// what one kilogram of a salt brings, then in mol/kg: the two multiply to a concentration.
/// </summary>
/// <remarks>Values are never negative in a solution; a difference of two compositions may be.</remarks>
public sealed class Composition : IEquatable<Composition>
{
    private static readonly Constituent[] Every = Enum.GetValues<Constituent>();
    private readonly double[] amounts;

    private Composition(double[] amounts) => this.amounts = amounts;

    /// <summary>Pure water: nothing of anything.</summary>
    public static Composition Nothing { get; } = new(new double[Every.Length]);

    /// <summary>All constituents, in the order in which they are listed.</summary>
    public static IReadOnlyList<Constituent> Constituents => Every;

    /// <summary>[mol/m³] The amount of one constituent.</summary>
    public double this[Constituent constituent] => amounts[(int)constituent];

    /// <summary>A composition of the given amounts; what is not named is absent, what is named twice is added up.</summary>
    /// <param name="amounts">[mol/m³] Each amount.</param>
    /// <exception cref="ArgumentOutOfRangeException">An amount is not a finite number.</exception>
    public static Composition Of(params IEnumerable<(Constituent Constituent, double Amount)> amounts)
    {
        ArgumentNullException.ThrowIfNull(amounts);
        double[] sums = new double[Every.Length];
        foreach ((Constituent constituent, double amount) in amounts)
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
        double[] copy = (double[])amounts.Clone();
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
        double[] sums = new double[Every.Length];
        for (int i = 0; i < sums.Length; i++)
        {
            sums[i] = amounts[i] + other.amounts[i];
        }
        return new Composition(sums);
    }

    /// <summary>Every amount times a factor.</summary>
    /// <param name="factor">[-] The factor.</param>
    public Composition Times(double factor)
    {
        double[] products = new double[Every.Length];
        for (int i = 0; i < products.Length; i++)
        {
            products[i] = amounts[i] * factor;
        }
        return new Composition(products);
    }

    /// <inheritdoc/>
    public bool Equals(Composition? other) => other is not null && amounts.AsSpan().SequenceEqual(other.amounts);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Composition);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (double amount in amounts)
        {
            hash.Add(amount);
        }
        return hash.ToHashCode();
    }
}
