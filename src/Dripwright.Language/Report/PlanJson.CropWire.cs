using Dripwright.Engine.Wires;

namespace Dripwright.Language.Report;

/// <content>What hangs over the rows.</content>
public static partial class PlanJson
{
    private static void WriteCropWire(UnitJson json, CropWirePlan cropWire)
    {
        json.Newtons("plant", cropWire.Plant?.Force);
        json.Text("plantBasis", cropWire.Plant is { } plant ? EnumWords.Of(plant.Basis) : "");
        json.Newtons("hookAllowed", cropWire.HookAllowed);
        json.Newtons("string", cropWire.String?.EachString);
        json.Metres("string", cropWire.String?.Length);
        json.List(
            "wires",
            cropWire.Wires,
            wire =>
            {
                json.Text("wire", wire.Place.Label);
                json.Count("row", wire.Place.Row);
                json.Newtons("hanging", wire.Weight);
                json.Newtons("tension", wire.Loaded.GreatestTension);
                json.Newtons("allowed", wire.Loaded.AllowedTension);
                json.Metres("lowest", wire.Loaded.LowestHeight);
                json.List(
                    "supports",
                    wire.Loaded.Supports,
                    support =>
                    {
                        json.Metres("station", support.Station);
                        json.Newtons("level", support.Level);
                        json.Newtons("down", support.Down);
                        json.Yes("end", support.End);
                    }
                );
                json.List(
                    "spans",
                    wire.Loaded.Spans,
                    span =>
                    {
                        json.Metres("slackLength", span.SlackLength);
                        json.Metres("sag", span.Sag);
                        json.Newtons("tension", span.GreatestTension);
                    }
                );
            }
        );
    }
}
