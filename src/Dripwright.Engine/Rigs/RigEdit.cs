using System.Text.Json.Nodes;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Findings;

namespace Dripwright.Engine.Rigs;

/// <summary>A rig to which changes are applied over and over, each time from the same beginning.</summary>
/// <param name="rig">The rig.</param>
/// <param name="catalogue">The catalogue it was read with.</param>
internal sealed class RigEdit(Rig rig, PartsCatalogue catalogue)
{
    private readonly JsonNode _root = JsonNode.Parse(RigWriter.Write(rig))!;

    /// <summary>The changed rig; null where the changes make none.</summary>
    public ResolvedRig? Applied(IReadOnlyList<FieldChange> changes)
    {
        try
        {
            return RigCure.Applied(_root.DeepClone(), changes, catalogue).Resolved;
        }
        catch (ArgumentException)
        {
            // A change of an element of a list that a change before it took out.
            return null;
        }
    }
}
