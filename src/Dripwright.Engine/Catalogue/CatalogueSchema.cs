using Dripwright.Engine.Files;

namespace Dripwright.Engine.Catalogue;

/// <summary>JSON Schema of a user's own catalogue file.</summary>
public static class CatalogueSchema
{
    /// <summary>The schema (draft 2020-12) as text with a line break at its end. What only the reader checks it says itself.</summary>
    /// <param name="catalogue">The parts whose keys are given as examples.</param>
    public static string Write(PartsCatalogue catalogue)
    {
        ArgumentNullException.ThrowIfNull(catalogue);
        const string Says =
            "Your own parts, salts and targets, laid over the built-in catalogue. Comments and trailing commas are allowed. The program also checks bounds of quantities, keys, and fields against each other.";
        return SchemaWriter.Write(typeof(CatalogueFile), "Catalogue file", Says, catalogue);
    }
}
