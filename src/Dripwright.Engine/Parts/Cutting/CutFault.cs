using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Parts;

/// <summary>Something in a <see cref="CutJob"/> that cannot be planned as it stands.</summary>
/// <param name="Place">Which entry: the label, or the name of the field.</param>
/// <param name="Found">What it says.</param>
/// <param name="Expected">What would be right.</param>
/// <param name="Remedy">What to do about it.</param>
public sealed record CutFault(string Place, Phrase Found, Phrase Expected, Phrase Remedy);

/// <summary>A plan, or the reasons why there is none.</summary>
/// <param name="Plan">The plan; null when there are faults.</param>
/// <param name="Faults">Faults of the job; empty when there is a plan.</param>
public sealed record CutResult(CutPlan? Plan, IReadOnlyList<CutFault> Faults);
