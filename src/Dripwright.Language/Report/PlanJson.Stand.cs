using System.Globalization;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Stands.Checks;

namespace Dripwright.Language.Report;

/// <content>Whether the stands hold.</content>
public static partial class PlanJson
{
    private static void WriteStrength(UnitJson json, StandPlan stand, RigLayout layout, PlanWords told)
    {
        json.List(
            "kinds",
            stand.Rows,
            row =>
            {
                json.Texts(
                    "rows",
                    layout
                        .Rows.Where(r => r.SpecIndex == row.Frame.Row.SpecIndex)
                        .Select(r => r.Number.ToString(CultureInfo.InvariantCulture))
                );
                json.Yes("holds", row.Holds);
                json.Ratio("utilisation", row.Utilisation);
                json.Text("weakest", row.Weakest is { } weakest ? told.Of(weakest.Tube.Name) : "");
                json.Text("weakestBy", row.Weakest is { } w ? EnumWords.Of(w.Use.Kind) : "");
                json.Ratio("buckling", row.Buckling);
                json.Ratio("sag", row.LargestSag);
                json.Ratio("lowestSlope", row.LowestSlope);
                json.Ratio("tipping", row.TipFactor);
                json.Newtons("tie", row.TieForce);
                json.Newtons("emptyTipping", row.EmptyTippingForce);
                json.Newtons("largestFoot", row.LargestFootForce);
                json.Kilograms("weight", row.Floor.Mass);
                json.Kilopascals("floor", row.Floor.Pressure);
                json.List(
                    "cases",
                    row.Cases,
                    c =>
                    {
                        json.Text("case", c.Loads.Case.Key);
                        json.Text("name", told.Of(c.Loads.Case.Name));
                        json.Newtons("weight", c.Loads.Weight);
                        json.Text(
                            "falls",
                            c.Fault is { } fault ? told.Of(fault.Sentence(row.Frame.Places[fault.Node])) : ""
                        );
                        json.Ratio("utilisation", c.Worst?.Utilisation);
                        json.Text("tube", c.Worst is { } worst ? told.Of(row.Frame.Tubes[worst.Tube].Name) : "");
                        json.Ratio("tipping", c.Tip.Factor);
                        json.Millimetres("slip", c.Slip);
                        json.Millimetres("lift", c.Lift);
                        json.Texts("feetLifted", (c.Solution?.Lifted ?? []).Select(n => told.Of(row.Frame.Places[n])));
                    }
                );
                json.List(
                    "cures",
                    row.Trials,
                    trial =>
                    {
                        json.Text("cure", EnumWords.Of(trial.Kind));
                        json.Text("what", told.Of(trial.What));
                        WriteChanges(json, trial.Cure);
                        json.Ratio("utilisation", trial.Utilisation);
                        json.Yes("enough", trial.Enough);
                    }
                );
            }
        );
        json.Kilopascals("reservoirFloor", stand.Reservoir.Pressure);
    }
}
