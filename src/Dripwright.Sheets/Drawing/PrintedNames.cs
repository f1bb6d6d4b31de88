using Dripwright.Engine.Printed;
using Dripwright.Language;

namespace Dripwright.Sheets.Drawing;

/// <summary>What printed parts are called.</summary>
internal static class PrintedNames
{
    /// <summary>"three-way joint".</summary>
    public static string Of(PrintedKind kind) => Words.Of($"printed.{kind}");
}
