namespace Dripwright.Sheets.Screen;

/// <summary>A thing of the drawing that can be reached, named and edited.</summary>
/// <param name="Part">Its name, the same in all views: "pot-1-3", "run-D1", "pump", "reservoir".</param>
/// <param name="Kind">"pot", "run", "pump" or "reservoir".</param>
/// <param name="Row">Row, from 1; 0 where it serves all.</param>
/// <param name="Spec">Index in the rig file's list of rows, from 0; -1 where it belongs to no row.</param>
/// <param name="Pot">Pot of the row, from 1; 0 for anything else.</param>
/// <param name="Run">Label of the run; "" for anything else.</param>
/// <param name="Label">What it is, in words that are read out.</param>
public sealed record ScreenPart(string Part, string Kind, int Row, int Spec, int Pot, string Run, string Label)
{
    /// <summary>[m³/s] What a pot gets or a run carries; null where it was not computed.</summary>
    public double? Flow { get; init; }

    /// <summary>[Pa] Mean pressure at a pot's emitters; null for anything else.</summary>
    public double? Pressure { get; init; }
}
