using System.Text.Json;

namespace Dripwright.Engine.Chemistry.Formulas;

/// <summary>Standard atomic masses of the elements that fertilisers, acids and water analyses can hold.</summary>
/// <remarks>
/// Source: IUPAC/CIAAW 2021, abridged to five digits (Prohaska et al., Pure Appl. Chem. 94, 2022). Older tables differ by up to
/// 0.02 % (N, S, Zn). Method page: docs/methods/formulas-and-salts.md
/// </remarks>
public static class AtomicMasses
{
    private static readonly Lazy<IReadOnlyDictionary<string, double>> s_masses = new(Load);

    /// <summary>[kg/mol] All masses by the element's symbol.</summary>
    public static IReadOnlyDictionary<string, double> All => s_masses.Value;

    /// <summary>The atomic mass of an element.</summary>
    /// <param name="symbol">Symbol such as <c>Ca</c>.</param>
    /// <returns>[kg/mol] Its mass.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such element is listed.</exception>
    public static double Of(string symbol)
    {
        ArgumentNullException.ThrowIfNull(symbol);
        return All.TryGetValue(symbol, out var mass)
            ? mass
            : throw new ArgumentOutOfRangeException(nameof(symbol), symbol, "No element that is listed.");
    }

    private static Dictionary<string, double> Load()
    {
        using var stream =
            typeof(AtomicMasses).Assembly.GetManifestResourceStream(
                "Dripwright.Engine.Chemistry.Formulas.Data.atomic-masses.json"
            ) ?? throw new InvalidOperationException("The atomic masses are missing from the engine.");
        using var data = JsonDocument.Parse(stream);
        return data
            .RootElement.GetProperty("gramsPerMole")
            .EnumerateObject()
            .ToDictionary(row => row.Name, row => row.Value.GetDouble() / 1000, StringComparer.Ordinal);
    }
}
