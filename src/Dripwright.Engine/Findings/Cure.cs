using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Findings;

/// <summary>A change of one field of the rig file.</summary>
/// <param name="Field">Its path, such as <c>reservoir.fill</c> or <c>rows[0].standHeight</c>.</param>
/// <param name="Text">
/// The new value as JSON writes it in the file: <c>"75 %"</c> with its quotes, <c>true</c>, <c>3</c>; null to take the field out, so
/// that the plan finds its value.
/// </param>
public sealed record FieldChange(string Field, string? Text);

/// <summary>A change that cures a finding: fields of the file, or steps at the bench that no field holds.</summary>
/// <param name="Changes">What to change in the rig file; empty where no field holds it.</param>
/// <param name="Steps">What to do by hand; empty where the file says it all.</param>
public sealed record Cure(IReadOnlyList<FieldChange> Changes, IReadOnlyList<Phrase> Steps)
{
    /// <summary>A change of one field.</summary>
    /// <param name="field">Its path.</param>
    /// <param name="text">The new value as JSON writes it; null to take the field out.</param>
    public static Cure Field(string field, string? text) => Of([new FieldChange(field, text)]);

    /// <summary>Changes of fields, all at once.</summary>
    /// <param name="changes">The changes.</param>
    public static Cure Of(IReadOnlyList<FieldChange> changes) => new(changes, []);

    /// <summary>Two cures are equal when they change and do the same.</summary>
    public bool Equals(Cure? other) =>
        other is not null && Changes.SequenceEqual(other.Changes) && Steps.SequenceEqual(other.Steps);

    /// <inheritdoc/>
    public override int GetHashCode() =>
        HashCode.Combine(Changes.Count, Changes.Count > 0 ? Changes[0] : null, Steps.Count);
}
