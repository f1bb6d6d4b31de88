using System.Globalization;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Stands.Checks;

namespace Dripwright.Language.Report;

/// <content>Whether the stands hold.</content>
public static partial class PlanJson
{
    private static void WriteStrength(UnitJson json, StandPlan stand, RigLayout layout)
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
                json.Text("weakest", row.Weakest?.Tube.Name ?? "");
                json.Text("weakestBy", row.Weakest is { } w ? EnumWords.Of(w.Use.Kind) : "");
                json.Ratio("buckling", row.Buckling);
                json.Ratio("sag", row.LargestSag);
                json.Ratio("lowestSlope", row.LowestSlope);
                json.Ratio("tipping", row.TipFactor);
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
                        json.Text("name", c.Loads.Case.Name);
                        json.Newtons("weight", c.Loads.Weight);
                        json.Text("falls", c.Fault?.Sentence ?? "");
                        json.Ratio("utilisation", c.Worst?.Utilisation);
                        json.Text("tube", c.Worst is { } worst ? row.Frame.Tubes[worst.Tube].Name : "");
                        json.Ratio("tipping", c.Tip.Factor);
                        json.Texts("feetLifted", (c.Solution?.Lifted ?? []).Select(n => row.Frame.Model.Nodes[n].Name));
                    }
                );
                json.List(
                    "cures",
                    row.Cures,
                    cure =>
                    {
                        json.Text("cure", EnumWords.Of(cure.Kind));
                        json.Text("what", cure.What);
                        json.Ratio("utilisation", cure.Utilisation);
                        json.Yes("enough", cure.Enough);
                    }
                );
            }
        );
        json.Kilopascals("reservoirFloor", stand.Reservoir.Pressure);
    }
}
