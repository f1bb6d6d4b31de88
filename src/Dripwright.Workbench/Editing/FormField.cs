using System.Text.Json.Nodes;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;
using Dripwright.Language;

namespace Dripwright.Workbench.Editing;

/// <summary>What kind of input a field takes.</summary>
public enum InputKind
{
    /// <summary>A quantity with its unit, as people write it.</summary>
    Quantity,

    /// <summary>A whole number.</summary>
    Whole,

    /// <summary>A plain number: a pH, a price.</summary>
    Number,

    /// <summary>One of a few.</summary>
    Choice,

    /// <summary>A part of the catalogue.</summary>
    Part,

    /// <summary>A line of text.</summary>
    Line,

    /// <summary>Text of several lines.</summary>
    Lines,

    /// <summary>A group of fields.</summary>
    Section,

    /// <summary>A list.</summary>
    List,
}

/// <summary>A field of the rig file as an input on a page, made from the field's own description.</summary>
public sealed class FormField
{
    private readonly FieldDescription _field;

    // A file of texts may say it better, or in another language, than the description of the field itself.
    private string Key => $"field.{_field.Property.DeclaringType!.Name}.{_field.Name}";

    private FormField(FieldDescription field, string path)
    {
        _field = field;
        Path = path;
    }

    /// <summary>Path in the rig file.</summary>
    public string Path { get; }

    /// <summary>Id of its input on the page.</summary>
    public string Id => FieldPath.Id(Path);

    /// <summary>What to call it.</summary>
    public string Label => Words.Or(Key, Spaced(_field.Name));

    /// <summary>What to call one element of it, where it is a list.</summary>
    public string ItemName => Words.Or($"item.{Spaced(_field.Name)}", Label);

    /// <summary>One sentence about it.</summary>
    public string Says => Words.Or(Key + ".says", _field.Says);

    /// <summary>What kind of input.</summary>
    public InputKind Kind =>
        _field.Kind switch
        {
            FieldKind.Quantity => InputKind.Quantity,
            FieldKind.Whole => InputKind.Whole,
            FieldKind.Number or FieldKind.Ph or FieldKind.Price => InputKind.Number,
            FieldKind.Flag or FieldKind.Choice => InputKind.Choice,
            FieldKind.Key => InputKind.Part,
            FieldKind.Text => _field.MayHaveLines ? InputKind.Lines : InputKind.Line,
            FieldKind.Section => InputKind.Section,
            _ => InputKind.List,
        };

    /// <summary>What is allowed, where that is worth saying.</summary>
    public string Allowed =>
        _field.Kind switch
        {
            FieldKind.Quantity => Words.Or(Key + ".range", _field.Range()),
            FieldKind.Whole => Words.Of("form.range", _field.Whole!.Min, _field.Whole.Max),
            FieldKind.Number or FieldKind.Ph => Words.Of("form.range", _field.Min, _field.Max),
            _ => "",
        };

    /// <summary>True for yes and no, which stand in the file without quotes.</summary>
    public bool IsFlag => _field.Kind is FieldKind.Flag;

    /// <summary>True where leaving it out is no choice.</summary>
    public bool MustBeGiven => _field.MustBeGiven;

    /// <summary>How the plan finds it where it is left out; null where a value is assumed.</summary>
    public string? FoundBy => _field.FoundBy is { } found ? Words.Or(Key + ".found", found) : null;

    /// <summary>True where that is not found but left open, such as a line of a water report, and so says itself what it is.</summary>
    public bool IsLeftOpen =>
        _field.FoundBy is { } found
        && (
            found.StartsWith("not ", StringComparison.Ordinal)
            || found.StartsWith("as ", StringComparison.Ordinal)
            || found == "enough"
        );

    /// <summary>Fewest elements of a list.</summary>
    public int Fewest => _field.Items?.Min ?? 0;

    /// <summary>Most elements of a list.</summary>
    public int Most => _field.Items?.Max ?? 0;

    /// <summary>The fields at the root of the rig file, but for the format's number, which is not a grower's business.</summary>
    public static IReadOnlyList<FormField> Root { get; } =
    [
        .. FieldDescription
            .Of(typeof(Rig))
            .Where(field => field.Name != "format")
            .Select(field => new FormField(field, field.Name)),
    ];

    /// <summary>The fields at the root of a brief, but for the format's number.</summary>
    public static IReadOnlyList<FormField> Brief { get; } =
    [
        .. FieldDescription
            .Of(typeof(Engine.Proposing.Brief))
            .Where(field => field.Name != "format")
            .Select(field => new FormField(field, field.Name)),
    ];

    /// <summary>The field of a section of the rig file.</summary>
    /// <param name="path">Its path, without lists.</param>
    public static FormField At(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        var fields = Root;
        FormField? found = null;
        foreach (var name in path.Split('.'))
        {
            found = fields.First(field => field.Path.EndsWith(name, StringComparison.Ordinal));
            fields = found.Kind is InputKind.Section ? found.Fields() : [];
        }

        return found!;
    }

    /// <summary>The fields of a section.</summary>
    public IReadOnlyList<FormField> Fields() => Under(Path);

    /// <summary>The fields of an element of a list.</summary>
    /// <param name="index">The element, from 0.</param>
    public IReadOnlyList<FormField> Fields(int index) => Under(FieldPath.Item(Path, index));

    /// <summary>What can be chosen: the word in the file, and what to call it.</summary>
    /// <param name="catalogue">The parts that can be named.</param>
    public IReadOnlyList<(string Value, string Name)> Choices(PartsCatalogue catalogue) =>
        _field.Kind switch
        {
            FieldKind.Flag => [("true", Words.Of("form.yes")), ("false", Words.Of("form.no"))],
            FieldKind.Choice =>
            [
                .. _field.Choices.Select(choice => (choice, Words.Or($"choice.{choice}", Spaced(choice)))),
            ],
            FieldKind.Key => Keys(catalogue, (PartKeyAttribute)_field.Key!),
            _ => [],
        };

    /// <summary>A number as it stands in the file, with a point where a decimal comma was typed; null where the text is none.</summary>
    internal static JsonNode? Number(string text) =>
        NumberText.Unquoted(text) is { } number ? JsonNode.Parse(number) : null;

    /// <summary>"roomLength" as "Room length".</summary>
    internal static string Spaced(string name)
    {
        var text = FieldDescription.Dashed(name).Replace('-', ' ');
        return text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
    }

    // The word that may stand instead of a key comes first, then the parts by their names.
    private static IReadOnlyList<(string Value, string Name)> Keys(PartsCatalogue catalogue, PartKeyAttribute key)
    {
        var parts = GroupKeys
            .Keys(catalogue, key.PartGroup)
            .Select(one => (Value: one, Name: GroupKeys.NameOf(catalogue, key.PartGroup, one) ?? one))
            .OrderBy(choice => choice.Name, StringComparer.Ordinal);
        return key.Or is { } word
            ? [(word, Words.Of(word == GroupKeys.Usual ? "form.usual" : "form.none")), .. parts]
            : [.. parts];
    }

    private IReadOnlyList<FormField> Under(string path) =>
        [
            .. FieldDescription
                .Of(_field.ValueType)
                .Select(field => new FormField(field, FieldPath.In(path, field.Name))),
        ];
}
