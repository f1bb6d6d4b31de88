using System.Reflection;
using System.Xml.Linq;

namespace Dripwright.Engine.Tests.Documents;

/// <summary>The documentation that the compiler writes beside an assembly, by member.</summary>
internal sealed class XmlDocs
{
    private readonly Dictionary<string, XElement> _members;

    private XmlDocs(Dictionary<string, XElement> members) => _members = members;

    /// <summary>The file beside an assembly.</summary>
    public static XmlDocs Of(Assembly assembly) =>
        new(
            XDocument
                .Load(Path.ChangeExtension(assembly.Location, ".xml"))
                .Descendants("member")
                .GroupBy(member => member.Attribute("name")!.Value)
                .ToDictionary(group => group.Key, group => group.First(), StringComparer.Ordinal)
        );

    /// <summary>What is said of a property or a constant; of a record's parameter what its record says.</summary>
    public string Of(MemberInfo member)
    {
        var type = member.DeclaringType!;
        var own = Element(member is FieldInfo ? "F:" : "P:", $"{Name(type)}.{member.Name}");
        return Text(own) + Parameter(type, member.Name);
    }

    /// <summary>What is said of a method as a whole and of what it returns.</summary>
    public string OfReturn(MethodInfo method) =>
        Text(Element(method)?.Element("returns")) + Text(Element(method)?.Element("summary"));

    /// <summary>What is said of a parameter.</summary>
    public string Of(ParameterInfo parameter)
    {
        var method = (MethodBase)parameter.Member;
        var own = Element(method)?.Elements("param").FirstOrDefault(param => IsOf(param, parameter.Name!));
        return Text(own) + (method is ConstructorInfo ? Parameter(method.DeclaringType!, parameter.Name!) : "");
    }

    /// <summary>Whether what is said stands with what is inherited.</summary>
    public bool IsInherited(MemberInfo member) =>
        (
            member is MethodBase method
                ? Element(method)
                : Element("P:", $"{Name(member.DeclaringType!)}.{member.Name}")
        )?.Element("inheritdoc")
            is not null;

    private string Parameter(Type type, string name) =>
        Text(Element("T:", Name(type))?.Elements("param").FirstOrDefault(param => IsOf(param, name)));

    private static bool IsOf(XElement param, string name) => param.Attribute("name")?.Value == name;

    private static string Text(XElement? element) => element?.Value ?? "";

    private XElement? Element(string kind, string name) => _members.GetValueOrDefault(kind + name);

    private XElement? Element(MethodBase method)
    {
        var parameters = method.GetParameters();
        var name = method is ConstructorInfo ? "#ctor" : method.Name;
        var generic = method.IsGenericMethod ? $"``{method.GetGenericArguments().Length}" : "";
        var list = parameters.Length == 0 ? "" : $"({string.Join(',', parameters.Select(p => Id(p.ParameterType)))})";
        return Element("M:", $"{Name(method.DeclaringType!)}.{name}{generic}{list}");
    }

    private static string Name(Type type) => type.FullName!.Replace('+', '.');

    private static string Id(Type type) =>
        type.IsByRef ? Id(type.GetElementType()!) + "@"
        : type.IsArray ? Id(type.GetElementType()!) + "[]"
        : type.IsGenericParameter ? (type.DeclaringMethod is null ? "`" : "``") + type.GenericParameterPosition
        : type.IsGenericType
            ? $"{Name(type.GetGenericTypeDefinition()).Split('`')[0]}{{{string.Join(',', type.GetGenericArguments().Select(Id))}}}"
        : Name(type);
}
