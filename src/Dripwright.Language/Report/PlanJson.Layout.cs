using Dripwright.Engine.Layout;
using Dripwright.Engine.Numerics;

namespace Dripwright.Language.Report;

/// <content>Where everything is.</content>
public static partial class PlanJson
{
    private static void WriteLayout(UnitJson json, RigLayout layout, PlanWords told)
    {
        json.Metres("lengthUsed", layout.LengthUsed);
        json.Metres("depthUsed", layout.DepthUsed);
        json.List("rows", layout.Rows, row => WriteRow(json, row));
        json.List("runs", layout.Runs, run => WriteRun(json, run));
        json.List(
            "supply",
            layout.Supply,
            link =>
            {
                json.Text("from", link.From);
                json.Text("to", link.To);
                json.Text("run", link.Run.Label);
                json.Metres("length", link.Length);
                json.Metres("height", link.Height);
                json.Ratio("loss", link.Loss);
            }
        );
        json.Object(
            "tank",
            () =>
            {
                json.Metres("left", layout.Tank.Left);
                json.Metres("right", layout.Tank.Right);
                json.Metres("front", layout.Tank.Front);
                json.Metres("back", layout.Tank.Back);
                json.Metres("floor", layout.Tank.Floor);
                json.Metres("rim", layout.Tank.Rim);
                json.Metres("full", layout.Tank.Full);
                json.Metres("lowest", layout.Tank.Lowest);
                json.Object("pumpOutlet", () => WritePoint(json, layout.Tank.PumpOutlet));
                json.Object("mouth", () => WritePoint(json, layout.Tank.Mouth));
            }
        );
        json.Object("stand", () => WriteStand(json, layout.Stand));
        json.List(
            "conflicts",
            layout.Conflicts,
            conflict =>
            {
                json.Text("run", conflict.Run);
                json.Count("hole", conflict.Hole.Number);
                json.Metres("station", conflict.Hole.Station);
                json.Text("with", told.Of(conflict.With));
                json.Metres("shift", conflict.Shift);
            }
        );
    }

    private static void WriteRow(UnitJson json, RowLayout row)
    {
        json.Count("row", row.Number);
        json.Text("potKind", row.Pot.Key);
        json.Count("modules", row.Modules);
        json.Metres("length", row.Length);
        json.Metres("depth", row.Depth);
        json.Metres("leftEnd", row.OriginX);
        json.Metres("middle", row.CentreY);
        json.Metres("floor", row.Floor);
        json.Metres("potBase", row.Base);
        json.MetresEach("joints", row.Joints);
        json.MetresEach("frames", row.Frames);
        json.MetresEach("feedEntries", row.FeedEntries);
        json.Metres("drainExit", row.DrainExit);
        json.List(
            "pots",
            row.Pots,
            pot =>
            {
                json.Count("pot", pot.Number);
                json.Metres("station", pot.Station);
                json.Object("at", () => WritePoint(json, pot.Base));
                json.Text("line", pot.BackLine ? "back" : "front");
                json.Text("crop", pot.Crop);
                json.Text("cropKey", pot.CropType?.Key ?? "");
                json.Count("plants", pot.Plants);
                json.Count("emitters", pot.Emitters);
                json.Share("valveOpen", pot.ValveOpen);
            }
        );
        json.List(
            "emitters",
            row.Emitters,
            emitter =>
            {
                json.Count("pot", emitter.Pot);
                json.Count("emitter", emitter.Index);
                json.Count("leg", emitter.Leg);
                json.Metres("station", emitter.Station);
                json.Metres("outlet", emitter.Outlet);
                json.Share("open", emitter.Open);
            }
        );
    }

    private static void WriteRun(UnitJson json, PipeRun run)
    {
        json.Text("run", run.Label);
        json.Text("service", EnumWords.Of(run.Service));
        json.Count("row", run.Row);
        json.Text("pipe", run.Pipe.Key);
        json.Metres("start", run.Start);
        json.Metres("end", run.End);
        json.Metres("length", run.Length);
        json.List("path", run.Path, point => WritePoint(json, point));
        json.List(
            "fittings",
            run.Fittings,
            fitting =>
            {
                json.Text("label", fitting.Label);
                json.Text("part", fitting.Type.Key);
                json.Metres("station", fitting.Station);
                json.Yes("interrupts", fitting.Interrupts);
            }
        );
        json.List(
            "pieces",
            run.Pieces,
            piece =>
            {
                json.Text("label", piece.Label);
                json.Metres("from", piece.From);
                json.Metres("to", piece.To);
                json.Metres("cutLength", piece.Length);
            }
        );
        json.List(
            "holes",
            run.Holes,
            hole =>
            {
                json.Count("hole", hole.Number);
                json.Metres("station", hole.Station);
                json.Text("use", EnumWords.Of(hole.Use));
                json.Count("pot", hole.Pot);
                json.Millimetres("diameter", hole.Diameter);
            }
        );
    }

    private static void WriteStand(UnitJson json, StandLayout stand)
    {
        json.Text("tube", stand.Tube.Key);
        json.List(
            "members",
            stand.Members,
            member =>
            {
                json.Text("label", member.Label);
                json.Text("role", EnumWords.Of(member.Role));
                json.Count("row", member.Row);
                json.Object("from", () => WritePoint(json, member.From));
                json.Object("to", () => WritePoint(json, member.To));
                json.Metres("cutLength", member.Length);
            }
        );
        json.List(
            "joints",
            stand.Joints,
            joint =>
            {
                json.Text("part", joint.Part);
                json.Count("row", joint.Row);
                json.Object("at", () => WritePoint(json, joint.At));
            }
        );
    }

    private static void WritePoint(UnitJson json, Vector3 point)
    {
        json.Metres("x", point.X);
        json.Metres("y", point.Y);
        json.Metres("z", point.Z);
    }
}
