using System.Globalization;
using Dripwright.Engine.Files;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Rigs;

/// <summary>One step from a format of the rig file to the next.</summary>
/// <param name="From">The format it starts from; it leads to the next number.</param>
/// <param name="Says">What it does, for the grower.</param>
/// <param name="Apply">Changes the file's tree. What it moves keeps its place in the file, so that faults still point there.</param>
internal sealed record RigUpgrade(int From, Phrase Says, Action<FileObject> Apply);

/// <summary>The way from older formats of the rig file to the newest.</summary>
internal static class RigUpgrades
{
    /// <summary>All steps, oldest first. Format 1 is the first, so there are none yet.</summary>
    public static readonly IReadOnlyList<RigUpgrade> All = [];

    /// <summary>Brings a tree to the newest format.</summary>
    /// <returns>Whether it is of the newest format now; there is a fault where not.</returns>
    public static bool Bring(FileObject root, IReadOnlyList<RigUpgrade> steps, FaultList faults, List<Phrase> done)
    {
        if (root["format"] is not { } format)
        {
            return true;
        }
        var first = steps.Count > 0 ? steps[0].From : Rig.CurrentFormat;
        var isWhole = WholeNumber.TryRead(format.Value, out var version);
        if (isWhole && version > Rig.CurrentFormat)
        {
            faults.Add(
                "format",
                format.Value,
                FaultList.Show(format.Value),
                Phrase.Of("fault.newer-format", Rig.CurrentFormat)
            );
            return false;
        }
        if (!isWhole || version < first)
        {
            // The reader itself says what a format looks like.
            return true;
        }
        foreach (var step in steps.Where(step => step.From >= version))
        {
            step.Apply(root);
            done.Add(step.Says);
        }
        var place = root.Fields.IndexOf(format);
        var current = Rig.CurrentFormat.ToString(CultureInfo.InvariantCulture);
        if (version < Rig.CurrentFormat && place >= 0)
        {
            root.Fields[place] = format with
            {
                Value = new FileNumber(format.Value.Line, format.Value.Column, current),
            };
        }
        return true;
    }
}
