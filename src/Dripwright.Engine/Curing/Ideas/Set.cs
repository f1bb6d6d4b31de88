using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Curing.Ideas;

/// <summary>Single changes of fields, in figures that a person would write.</summary>
internal static class Set
{
    /// <summary>A part or a choice.</summary>
    public static FieldChange To(string path, string text) => RigCure.Text(path, text);

    /// <summary>Left to the plan.</summary>
    public static FieldChange Out(string path) => new(path, null);

    /// <summary>Yes or no.</summary>
    public static FieldChange To(string path, bool value) => new(path, value ? "true" : "false");

    /// <summary>A whole number; null where the field holds none such.</summary>
    public static FieldChange? Whole(string path, int number) =>
        RigCure.Field(path).Whole is { } range && number >= range.Min && number <= range.Max
            ? RigCure.Whole(path, number)
            : null;

    /// <summary>[-] A share, in whole per cents.</summary>
    public static FieldChange Share(string path, double share) =>
        RigCure.Text(path, $"{QuantityWords.Count((int)Math.Round(share * 100))} %");

    /// <summary>[-] A slope, in halves of a per cent.</summary>
    public static FieldChange Slope(string path, double slope) =>
        RigCure.Text(path, $"{QuantityWords.Number(Math.Round(slope * 200) / 2, "0.#")} %");

    /// <summary>[s] A time, in whole minutes.</summary>
    public static FieldChange Minutes(string path, double seconds) =>
        RigCure.Text(path, $"{QuantityWords.Count((int)Math.Max(1, Math.Round(seconds / 60)))} min");

    /// <summary>A quantity of another kind, as the rig's units write it; null where the field does not hold it.</summary>
    public static FieldChange? Amount(Rig rig, string path, Dimension dimension, double si)
    {
        var text = QuantityText.Format(dimension, si, rig.Units);
        var field = RigCure.Field(path);
        return QuantityText.TryParse(dimension, text, out var meant) && meant >= field.Min && meant <= field.Max
            ? RigCure.Text(path, text)
            : null;
    }

    /// <summary>Changes as one cure; nothing where one of them cannot be made.</summary>
    public static IEnumerable<Cure> Cure(params IReadOnlyList<FieldChange?> changes) => RigCure.Offered(changes);
}
