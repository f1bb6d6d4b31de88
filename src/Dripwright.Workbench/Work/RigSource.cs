using Dripwright.Engine.Rigs;

namespace Dripwright.Workbench.Work;

/// <summary>A rig file as it came.</summary>
/// <param name="Name">Name of the file, for its faults.</param>
/// <param name="Text">Its text.</param>
/// <param name="Revision">Revision for the title blocks; empty for a draft.</param>
/// <param name="OnHand">Parts that lie in the garden, for a rig of the garden: they are used first, as on the pages.</param>
internal sealed record RigSource(string Name, string Text, string Revision = "", IReadOnlyList<OnHand>? OnHand = null);
