using CsCheck;

namespace Dripwright.Workbench.Tests.Editing;

/// <summary>Generators the library has under longer names.</summary>
internal static class Pick
{
    /// <summary>One of the values.</summary>
    public static Gen<T> From<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(index => values[index]);
}
