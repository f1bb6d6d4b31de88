using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;

namespace Dripwright.Engine.Proposing;

/// <summary>The JSON Schema of a brief, for editors and other programs.</summary>
public static class BriefSchema
{
    /// <summary>The schema (draft 2020-12) as text. What only the reader checks it says itself.</summary>
    /// <param name="catalogue">The parts whose keys are given as examples.</param>
    public static string Write(PartsCatalogue catalogue)
    {
        ArgumentNullException.ThrowIfNull(catalogue);
        const string Says =
            "What you have and want, from which rigs are suggested. Comments and trailing commas are allowed. The program also checks bounds of quantities, keys of the catalogue, and fields against each other.";
        return SchemaWriter.Write(typeof(Brief), "Brief", Says, catalogue);
    }
}
