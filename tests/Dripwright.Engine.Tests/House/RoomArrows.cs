using Mono.Cecil;
using Mono.Cecil.Cil;

namespace Dripwright.Engine.Tests.House;

/// <summary>Which rooms of an assembly use which, read from what was compiled: the first name below the assembly's own is the room.</summary>
/// <remarks>An arrow is a type of one room that uses a type of another: by its base, members, attributes or code.</remarks>
internal static class RoomArrows
{
    /// <summary>The room of what lies in no folder: in the engine the plan and what makes it.</summary>
    public const string Root = "Plan";

    /// <summary>How many pairs of types stand behind each arrow.</summary>
    /// <param name="assembly">Path of the assembly.</param>
    /// <param name="root">The name that all of its own names begin with.</param>
    public static IReadOnlyDictionary<(string From, string To), int> Of(string assembly, string root)
    {
        using var known = new DefaultAssemblyResolver();
        // What an attribute is given may be of the platform's or a library's kinds.
        var places = ((string?)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES") ?? "").Split(Path.PathSeparator);
        foreach (var folder in places.Select(Path.GetDirectoryName).Distinct())
        {
            known.AddSearchDirectory(folder);
        }

        using var module = ModuleDefinition.ReadModule(assembly, new ReaderParameters { AssemblyResolver = known });
        var pairs = new HashSet<(TypeDefinition From, TypeDefinition To)>();
        foreach (var type in module.GetTypes().Where(IsOurs))
        {
            pairs.UnionWith(UsedBy(type).Where(IsOurs).Select(used => (Outermost(type), Outermost(used))));
        }

        return pairs
            .Select(pair => (From: RoomOf(pair.From, root), To: RoomOf(pair.To, root)))
            .Where(pair => pair.From != pair.To)
            .GroupBy(pair => pair)
            .ToDictionary(same => same.Key, same => same.Count());
    }

    /// <summary>Whole names of the types that people wrote; those inside other types, and those made from pages and texts, left out.</summary>
    /// <param name="assembly">Path of the assembly.</param>
    public static IReadOnlyList<string> NamesIn(string assembly)
    {
        using var module = ModuleDefinition.ReadModule(assembly);
        return
        [
            .. module
                .Types.Where(type => IsOurs(type) && type.Name is not ("_Imports" or "GeneratedRegexAttribute"))
                .Select(type => type.FullName.Split('`')[0]),
        ];
    }

    private static TypeDefinition Outermost(TypeDefinition type) =>
        type.DeclaringType is { } outer ? Outermost(outer) : type;

    // What the compiler adds has a name that no person can write.
    private static bool IsOurs(TypeDefinition type) =>
        Outermost(type) is var outer
        && outer.Namespace.StartsWith("Dripwright", StringComparison.Ordinal)
        && !outer.Name.Contains('<', StringComparison.Ordinal);

    private static string RoomOf(TypeDefinition type, string root) =>
        type.Namespace.Length > root.Length ? type.Namespace[(root.Length + 1)..].Split('.')[0] : Root;

    private static HashSet<TypeDefinition> UsedBy(TypeDefinition type)
    {
        var used = new HashSet<TypeDefinition>();
        Use(type.BaseType);
        Attributes(type);
        foreach (var contract in type.Interfaces)
        {
            Use(contract.InterfaceType);
        }

        foreach (var field in type.Fields)
        {
            Use(field.FieldType);
            Attributes(field);
        }

        foreach (var property in type.Properties)
        {
            Use(property.PropertyType);
            Attributes(property);
        }

        foreach (var method in type.Methods)
        {
            Signature(method);
            Attributes(method);
            if (method.HasBody)
            {
                Body(method.Body);
            }
        }

        return used;

        void Use(TypeReference? reference)
        {
            switch (reference)
            {
                case null or GenericParameter:
                    return;
                case GenericInstanceType made:
                    Each(made.GenericArguments);
                    Use(made.ElementType);
                    return;
                case TypeSpecification shaped:
                    Use(shaped.ElementType);
                    return;
                default:
                    // Only what this module defines: the rest is the platform's and the libraries'.
                    if (reference.Scope == type.Module && reference.Resolve() is { } found)
                    {
                        used.Add(found);
                    }

                    return;
            }
        }

        void Each(IEnumerable<TypeReference> references)
        {
            foreach (var reference in references)
            {
                Use(reference);
            }
        }

        void Signature(MethodReference method)
        {
            Use(method.DeclaringType);
            Use(method.ReturnType);
            Each(method.Parameters.Select(parameter => parameter.ParameterType));
            if (method is GenericInstanceMethod made)
            {
                Each(made.GenericArguments);
            }
        }

        void Attributes(ICustomAttributeProvider provider)
        {
            foreach (var attribute in provider.CustomAttributes)
            {
                Use(attribute.AttributeType);
                Each(attribute.ConstructorArguments.Select(argument => argument.Type));
            }
        }

        void Body(MethodBody body)
        {
            Each(body.Variables.Select(variable => variable.VariableType));
            foreach (var operand in body.Instructions.Select(instruction => instruction.Operand))
            {
                switch (operand)
                {
                    case TypeReference reference:
                        Use(reference);
                        break;
                    case MethodReference method:
                        Signature(method);
                        break;
                    case FieldReference field:
                        Use(field.DeclaringType);
                        Use(field.FieldType);
                        break;
                }
            }
        }
    }
}
