using System.Globalization;

namespace Dripwright.Engine.Scenes;

/// <summary>Names of things, the same in every drawing of the screen.</summary>
public static class SceneNames
{
    /// <summary>The reservoir.</summary>
    public const string Reservoir = "reservoir";

    /// <summary>The pump, or a high reservoir's outlet.</summary>
    public const string Pump = "pump";

    /// <summary>A pot.</summary>
    /// <param name="row">Row, from 1.</param>
    /// <param name="pot">Pot of the row, from 1.</param>
    public static string Pot(int row, int pot) => string.Create(CultureInfo.InvariantCulture, $"pot-{row}-{pot}");

    /// <summary>A run of pipe.</summary>
    /// <param name="label">Its label.</param>
    public static string Run(string label) => "run-" + label;

    /// <summary>One of the things that share a label, or of a pot.</summary>
    internal static string Numbered(string kind, string label, int number) =>
        string.Create(CultureInfo.InvariantCulture, $"{kind}-{label}-{number}");

    /// <summary>One of the things of a pot.</summary>
    internal static string OfPot(string kind, int row, int pot) =>
        string.Create(CultureInfo.InvariantCulture, $"{kind}-{row}-{pot}");
}
