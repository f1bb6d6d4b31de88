namespace Dripwright.Engine.Chemistry.Formulas;

/// <summary>A chemical formula, summed up: how many atoms of each element, and in which groups nutrients stand.</summary>
/// <remarks>
/// Brackets ( ), [ ] and { } may be nested. A hydrate's water follows a dot: <c>Ca(NO3)2·4H2O</c>, <c>Ca(NO3)2.4H2O</c> or
/// <c>Ca(NO3)2*4H2O</c>. A point is read as a decimal where no hydrate can be meant: in a number before a group
/// (<c>CaSO4.0.5H2O</c>), after a nought (<c>Fe0.95O</c>), or anywhere in a formula whose hydrates are written with · or *.
/// Charges are not read. Method page: docs/methods/formulas-and-salts.md
/// </remarks>
public sealed class Formula
{
    private readonly Dictionary<string, double> _atoms;

    internal Formula(string text, Dictionary<string, double> atoms, Dictionary<AtomGroup, double> groups)
    {
        Text = text;
        this._atoms = atoms;
        Groups = groups;
        MolarMass = atoms.Sum(atom => atom.Value * AtomicMasses.Of(atom.Key));
    }

    /// <summary>As it was written.</summary>
    public string Text { get; }

    /// <summary>[kg/mol] Mass of one mole.</summary>
    public double MolarMass { get; }

    /// <summary>[-] Atoms of each element in one formula unit, by symbol.</summary>
    public IReadOnlyDictionary<string, double> Atoms => _atoms;

    /// <summary>How often each group stands in one formula unit.</summary>
    internal IReadOnlyDictionary<AtomGroup, double> Groups { get; }

    /// <summary>Reads a formula that is known to be right.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is no formula; the message says where and why.</exception>
    public static Formula Parse(string text)
    {
        var reading = Read(text);
        return reading.Formula
            ?? throw new ArgumentOutOfRangeException(nameof(text), text, reading.Fault!.Value.ToString());
    }

    /// <summary>Reads a formula that a person wrote.</summary>
    /// <returns>The formula, or what is wrong with the text. Never throws for what stands in it.</returns>
    public static FormulaReading Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return new FormulaText(text).Read();
    }

    /// <summary>Atoms of an element in one formula unit.</summary>
    /// <returns>[-] Their number; 0 where the element is absent.</returns>
    public double Count(string symbol) => _atoms.GetValueOrDefault(symbol);

    /// <summary>Share of an element in the mass.</summary>
    /// <returns>[-] 0 to 1; 0 where the element is absent.</returns>
    /// <example>Ca in Ca(NO3)2·4H2O: 0.16972.</example>
    public double MassFraction(string symbol) =>
        _atoms.TryGetValue(symbol, out var count) ? count * AtomicMasses.Of(symbol) / MolarMass : 0;

    /// <inheritdoc/>
    public override string ToString() => Text;
}
