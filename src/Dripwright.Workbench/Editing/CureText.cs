using System.Text.Json.Nodes;
using Dripwright.Engine.Findings;

namespace Dripwright.Workbench.Editing;

/// <summary>Applies cures to the text of a rig file. All else stays as typed, comments and layout too.</summary>
public static class CureText
{
    /// <summary>The text with all changes of a cure made.</summary>
    /// <param name="text">The text.</param>
    /// <param name="cure">The cure.</param>
    /// <exception cref="FormatException">The text is no JSON object, or an index lies beyond its list.</exception>
    public static string Applied(string text, Cure cure)
    {
        ArgumentNullException.ThrowIfNull(cure);
        foreach (var change in cure.Changes)
        {
            text =
                change.Text is { } value && JsonNode.Parse(value) is { } node
                    ? RigFileText.Set(text, change.Field, node)
                    : RigFileText.Remove(text, change.Field);
        }

        return text;
    }
}
