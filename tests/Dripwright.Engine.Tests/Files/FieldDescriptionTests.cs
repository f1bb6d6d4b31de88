using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Proposing;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Tests.Files;

/// <summary>All that is described by attributes on records: rig, brief and catalogue files.</summary>
public sealed class FieldDescriptionTests
{
    public static TheoryData<string> Roots => [.. s_roots.Keys];

    private static readonly Dictionary<string, Type> s_roots = new()
    {
        ["rig"] = typeof(Rig),
        ["brief"] = typeof(Brief),
        ["catalogue"] = typeof(CatalogueFile),
    };

    private static IEnumerable<FieldDescription> All(Type record) =>
        FieldDescription
            .Of(record)
            .SelectMany(field =>
                (field.Element ?? field).Kind is FieldKind.Section ? All(field.ValueType).Prepend(field) : [field]
            );

    [Theory]
    [MemberData(nameof(Roots))]
    public void Every_value_is_assumed_within_its_bounds_or_found_or_must_be_given(string root)
    {
        foreach (var field in All(s_roots[root]))
        {
            var name = $"{field.Property.DeclaringType!.Name}.{field.Name}";
            foreach (var units in Enum.GetValues<UnitSystem>())
            {
                switch (field.AssumedValue(units))
                {
                    case double number:
                        Assert.True(number >= field.Min && number <= field.Max, name);
                        break;
                    case int whole:
                        Assert.True(whole >= field.Whole!.Min && whole <= field.Whole.Max, name);
                        break;
                    case null:
                        Assert.True(
                            field.FoundBy is not null
                                || field.MustBeGiven
                                || field.Kind is FieldKind.Section or FieldKind.List,
                            name
                        );
                        break;
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(Roots))]
    public void A_value_that_may_be_absent_has_a_place_for_that(string root)
    {
        foreach (var field in All(s_roots[root]).Where(field => field.FoundBy is not null))
        {
            var type = field.Property.PropertyType;
            Assert.True(
                !type.IsValueType || Nullable.GetUnderlyingType(type) is not null,
                $"{field.Property.DeclaringType!.Name}.{field.Name} cannot hold nothing"
            );
        }
    }

    [Theory]
    [MemberData(nameof(Roots))]
    public void Bounds_that_are_read_are_told_with_what_is_expected(string root)
    {
        foreach (var field in All(s_roots[root]))
        {
            Assert.NotEqual("", field.Expected().Told());
            Assert.True(field.Says.EndsWith('.') || field.Says.EndsWith('"'), field.Says);
        }
    }
}
