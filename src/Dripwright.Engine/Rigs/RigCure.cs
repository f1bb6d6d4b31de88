using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Rigs;

/// <summary>Cures as changes of a rig: how they are written, and a rig with one applied.</summary>
public static class RigCure
{
    private static readonly JsonSerializerOptions s_plain = new()
    {
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The rig that a cure makes, read as its file would be.</summary>
    /// <param name="rig">The rig.</param>
    /// <param name="cure">The cure; its steps at the bench change no field.</param>
    /// <param name="catalogue">The catalogue the rig was read with.</param>
    /// <returns>The changed rig, or the faults that the change would make.</returns>
    /// <exception cref="ArgumentException">A path leads to nothing, or a new value is no JSON.</exception>
    public static RigReading Applied(Rig rig, Cure cure, PartsCatalogue catalogue)
    {
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(cure);
        return Applied(JsonNode.Parse(RigWriter.Write(rig))!, cure.Changes, catalogue);
    }

    /// <summary>The rig that changes make of a file's nodes.</summary>
    /// <param name="root">The nodes; they are changed.</param>
    /// <param name="changes">The changes.</param>
    /// <param name="catalogue">The catalogue the rig was read with.</param>
    /// <exception cref="ArgumentException">A path leads to nothing, or a new value is no JSON.</exception>
    internal static RigReading Applied(JsonNode root, IReadOnlyList<FieldChange> changes, PartsCatalogue catalogue)
    {
        foreach (var change in changes)
        {
            Apply(root, change);
        }

        return RigReader.Read(root.ToJsonString(s_plain), "cure", catalogue);
    }

    /// <summary>A field of text, a part or a choice.</summary>
    /// <param name="path">Its path.</param>
    /// <param name="text">The new text.</param>
    internal static FieldChange Text(string path, string text) => new(path, JsonSerializer.Serialize(text, s_plain));

    /// <summary>A field of a whole number.</summary>
    /// <param name="path">Its path.</param>
    /// <param name="number">[-] The new number.</param>
    internal static FieldChange Whole(string path, int number) =>
        new(path, number.ToString(CultureInfo.InvariantCulture));

    /// <summary>A field of yes or no, set to yes.</summary>
    /// <param name="path">Its path.</param>
    internal static FieldChange Yes(string path) => new(path, "true");

    /// <summary>A whole list in the place of the one there.</summary>
    /// <param name="rig">The rig, whose units the text is in.</param>
    /// <param name="path">Its path.</param>
    /// <param name="elements">Its elements.</param>
    internal static FieldChange List<T>(Rig rig, string path, IReadOnlyList<T> elements)
        where T : notnull
    {
        var text = new RecordText(rig.Units, leaveOutAssumed: true, comments: false);
        return new FieldChange(path, $"[{string.Join(", ", elements.Select(one => OneLine(text.Write(one))))}]");
    }

    // Blanks between the tokens of a written record stand in no text of the grower's: those are kept.
    private static string OneLine(string written) => JsonNode.Parse(written)!.ToJsonString(s_plain);

    /// <summary>A length that is at least so much, rounded up to what a tape shows; null where the field holds none so long.</summary>
    /// <param name="rig">The rig, whose units the text is in.</param>
    /// <param name="path">Its path.</param>
    /// <param name="least">[m] The least length that cures.</param>
    internal static FieldChange? LengthUp(Rig rig, string path, double least)
    {
        ArgumentNullException.ThrowIfNull(rig);
        var step = rig.Units == UnitSystem.Us ? 0.0254 / 4 : 0.005;
        return Length(rig, path, Math.Ceiling((least / step) - 1e-6) * step);
    }

    /// <summary>A length that is at most so much, rounded down to what a tape shows; null where the field holds none so short.</summary>
    /// <param name="rig">The rig, whose units the text is in.</param>
    /// <param name="path">Its path.</param>
    /// <param name="most">[m] The greatest length that cures.</param>
    internal static FieldChange? LengthDown(Rig rig, string path, double most)
    {
        ArgumentNullException.ThrowIfNull(rig);
        var step = rig.Units == UnitSystem.Us ? 0.0254 / 4 : 0.005;
        return Length(rig, path, Math.Floor((most / step) + 1e-6) * step);
    }

    /// <summary>The cures, where every change of theirs can be made; none else.</summary>
    /// <param name="changes">The changes of one cure.</param>
    internal static IReadOnlyList<Cure> Offered(params IReadOnlyList<FieldChange?> changes) =>
        changes.Count > 0 && changes.All(c => c is not null) ? [Cure.Of([.. changes.OfType<FieldChange>()])] : [];

    /// <summary>What the format says of a field.</summary>
    /// <param name="path">Its path.</param>
    /// <exception cref="ArgumentException">The path leads to nothing.</exception>
    internal static FieldDescription Field(string path)
    {
        var type = typeof(Rig);
        FieldDescription? field = null;
        foreach (var name in path.Split('.').Select(step => step.Split('[')[0]))
        {
            field =
                FieldDescription.Of(type).FirstOrDefault(f => f.Name == name)
                ?? throw new ArgumentException($"There is no field '{path}'.", nameof(path));
            type = field.ValueType;
        }

        return field!;
    }

    private static FieldChange? Length(Rig rig, string path, double metres)
    {
        var text = QuantityText.Mark(metres, rig.Units);
        var meant = QuantityText.Parse(Dimension.Length, text);
        var field = Field(path);
        return meant >= field.Min && meant <= field.Max ? Text(path, text) : null;
    }

    private static void Apply(JsonNode root, FieldChange change)
    {
        var steps = change.Field.Split('.');
        var holder = root;
        foreach (var step in steps[..^1])
        {
            holder = Step(holder, step, change.Field);
        }

        var section = holder as JsonObject ?? throw Nowhere(change.Field);
        if (change.Text is null)
        {
            section.Remove(steps[^1]);
            return;
        }

        try
        {
            section[steps[^1]] = JsonNode.Parse(change.Text);
        }
        catch (JsonException wrong)
        {
            throw new ArgumentException($"'{change.Text}' for {change.Field} is no JSON.", nameof(change), wrong);
        }
    }

    // "rows[0]" or "feed".
    private static JsonNode Step(JsonNode holder, string step, string path)
    {
        var parts = step.TrimEnd(']').Split('[');
        var next = (holder as JsonObject)?[parts[0]] ?? throw Nowhere(path);
        if (parts.Length == 1)
        {
            return next;
        }

        return
            next is JsonArray list
            && int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out var index)
            && index < list.Count
            ? list[index]!
            : throw Nowhere(path);
    }

    private static ArgumentException Nowhere(string path) =>
        new($"There is no field '{path}' in this rig.", nameof(path));
}
