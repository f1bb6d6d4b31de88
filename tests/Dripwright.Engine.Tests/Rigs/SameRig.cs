using System.Collections;
using System.Reflection;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Tests.Rigs;

/// <summary>Compares rigs by all their values, the elements of their lists too.</summary>
public static class SameRig
{
    /// <summary>Whether two rigs say the same.</summary>
    public static bool As(Rig one, Rig other) => Same(one, other);

    private static bool Same(object? one, object? other)
    {
        if (one is null || other is null)
        {
            return one is null && other is null;
        }
        if (one is IEnumerable and not string)
        {
            var (left, right) = (
                ((IEnumerable)one).Cast<object>().ToList(),
                ((IEnumerable)other).Cast<object>().ToList()
            );
            return left.Count == right.Count && left.Zip(right).All(pair => Same(pair.First, pair.Second));
        }
        return one.GetType().Namespace == typeof(Rig).Namespace && one.GetType().IsClass
            ? one.GetType()
                .GetProperties(BindingFlags.Public | BindingFlags.Instance)
                .All(property => Same(property.GetValue(one), property.GetValue(other)))
            : one.Equals(other);
    }
}
