using Dripwright.Engine;
using Dripwright.Engine.Printed;
using Dripwright.Sheets.Drawing;

namespace Dripwright.Sheets.Views;

/// <summary>The small printed parts of a kind, as a step names them.</summary>
internal static class PrintedSteps
{
    /// <summary>"12 × A1, 4 × A2"; empty where there is none.</summary>
    public static string Of(Plan plan, PrintedKind kind) =>
        string.Join(
            ", ",
            plan.Printed.Parts.Where(part => part.Design.Kind == kind)
                .Select(part => $"{Wording.Count(part.Count)} × {part.Number}")
        );
}
