using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Proposing;

/// <summary>Which parts are bought together: inch sizes or metric ones. A part that names neither goes with both.</summary>
internal static class Market
{
    private static readonly string[] s_inch = ["gph", "psi", "gal", "in", "ga", "mesh"];
    private static readonly string[] s_metric = ["lph", "kpa", "l", "um", "mm"];

    /// <summary>True where a grower who buys in these units finds the part.</summary>
    public static bool Sells(CatalogueEntry part, UnitSystem units) =>
        part switch
        {
            PipeSize pipe => units
                == (pipe.Family is PipeFamily.PvcSchedule40 or PipeFamily.HoseInch ? UnitSystem.Us : UnitSystem.Metric),
            EmitterType emitter => Named(part.Key, units) && emitter.Pieces.All(p => Named(p, units)),
            DrainOutletType outlet => Named(part.Key, units) && outlet.Pieces.All(p => Named(p, units)),
            _ => Named(part.Key, units),
        };

    private static bool Named(string key, UnitSystem units)
    {
        var words = key.Split('-');
        var inch = key.Contains('/', StringComparison.Ordinal) || words.Any(w => Ends(w, s_inch));
        var metric = words.Any(w => Ends(w, s_metric));
        return units == UnitSystem.Us ? inch || !metric : metric || !inch;
    }

    // The unit stands alone or after a number: "gal" and "1gph", but not the "in" of "drain".
    private static bool Ends(string word, string[] units) =>
        units.Any(u =>
            word.EndsWith(u, StringComparison.Ordinal)
            && (word.Length == u.Length || char.IsAsciiDigit(word[^(u.Length + 1)]))
        );
}
