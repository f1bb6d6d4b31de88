using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;

namespace Dripwright.Engine.Tests.Documents;

/// <summary>Bare doubles are safe only where each says its unit.</summary>
public sealed partial class UnitsTests
{
    private const BindingFlags Declared =
        BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    private static readonly XmlDocs s_docs = XmlDocs.Of(typeof(Planner).Assembly);

    private static readonly Type[] s_types =
    [
        .. typeof(Planner).Assembly.GetExportedTypes().Where(type => !typeof(Delegate).IsAssignableFrom(type)),
    ];

    [Fact]
    public void Every_public_number_says_its_unit_in_brackets_or_in_its_name()
    {
        string[] silent = [.. Properties().Concat(Constants()).Concat(Parameters()).Concat(Returns()).Order()];
        Assert.True(silent.Length == 0, $"{silent.Length} say no unit:\n{string.Join('\n', silent)}");
    }

    [Fact]
    public void The_search_for_numbers_finds_them()
    {
        Assert.True(
            s_types.SelectMany(type => type.GetProperties(Declared)).Count(p => IsNumber(p.PropertyType)) > 500
        );
        Assert.True(Methods().SelectMany(m => m.GetParameters()).Count(p => IsNumber(p.ParameterType)) > 200);
    }

    private static IEnumerable<string> Properties() =>
        from type in s_types
        from property in type.GetProperties(Declared)
        where IsNumber(property.PropertyType) && property.GetIndexParameters().Length == 0
        where !s_docs.IsInherited(property) && !SaysUnit(property.Name, s_docs.Of(property))
        select $"{type.FullName}.{property.Name}";

    private static IEnumerable<string> Constants() =>
        from type in s_types
        where !type.IsEnum
        from field in type.GetFields(Declared)
        where IsNumber(field.FieldType) && !SaysUnit(field.Name, s_docs.Of(field))
        select $"{type.FullName}.{field.Name}";

    private static IEnumerable<string> Parameters() =>
        from method in Methods()
        from parameter in method.GetParameters()
        where IsNumber(parameter.ParameterType)
        where !s_docs.IsInherited(method) && !SaysUnit(parameter.Name!, s_docs.Of(parameter))
        select $"{method.DeclaringType!.FullName}.{method.Name}({parameter.Name})";

    private static IEnumerable<string> Returns() =>
        from method in Methods().OfType<MethodInfo>()
        where IsNumber(method.ReturnType)
        where !s_docs.IsInherited(method) && !SaysUnit(method.Name, s_docs.OfReturn(method))
        select $"{method.DeclaringType!.FullName}.{method.Name} returns";

    private static IEnumerable<MethodBase> Methods() =>
        from type in s_types
        from method in type.GetMethods(Declared).Cast<MethodBase>().Concat(type.GetConstructors(Declared))
        // What the compiler makes of a record; accessors count as their properties, operators keep the unit.
        where !method.IsDefined(typeof(CompilerGeneratedAttribute)) && (!method.IsSpecialName || method.IsConstructor)
        select method;

    /// <summary>A double or some of them; of several things together the unit is that of each.</summary>
    private static bool IsNumber(Type type) =>
        type == typeof(double)
        || (type.HasElementType && IsNumber(type.GetElementType()!))
        || (
            type.IsGenericType
            && type.Namespace!.StartsWith("System", StringComparison.Ordinal)
            && !typeof(Delegate).IsAssignableFrom(type)
            && type.GetGenericArguments().Any(IsNumber)
        );

    private static bool SaysUnit(string name, string said) => Brackets().IsMatch(said) || Units().IsMatch(name);

    [GeneratedRegex(@"\[[^\]]+\]")]
    private static partial Regex Brackets();

    [GeneratedRegex(
        "(Metres|Millimetres|Litres|Millilitres|Grams|Milligrams|Kilograms|Seconds|Hours|Days|Percent|Share|Ratio|Kelvins|Celsius"
            + "|Pascals|Kilopascals|Watts|Newtons|PerMetre|PerLitre|PerCubicMetre|PerHour|PerDay|PerMole|PerCentimetre|Inches|Feet)$",
        RegexOptions.IgnoreCase
    )]
    private static partial Regex Units();
}
