using System.Text.Json.Nodes;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;

namespace Dripwright.Workbench.Editing;

/// <summary>A text that is edited field by field: a rig file or a brief.</summary>
public interface IFormDesk
{
    /// <summary>The parts that can be named.</summary>
    PartsCatalogue Catalogue { get; }

    /// <summary>What stands at a path in the text.</summary>
    /// <param name="path">The path.</param>
    JsonNode? At(string path);

    /// <summary>Faults at a path.</summary>
    /// <param name="path">The path.</param>
    IEnumerable<Fault> FaultsAt(string path);

    /// <summary>What is assumed at a path; null where the text says it.</summary>
    /// <param name="path">The path.</param>
    Assumed? AssumedAt(string path);

    /// <summary>Puts a value at a path, or takes it away.</summary>
    /// <param name="path">The path.</param>
    /// <param name="value">The value; null to leave it out.</param>
    /// <param name="what">What that is, for the list of steps.</param>
    Task Edit(string path, JsonNode? value, string what);

    /// <summary>Keeps what was typed now.</summary>
    Task Keep();
}
