using Dripwright.Engine.Water;

namespace Dripwright.Language.Report;

/// <content>Drain and reservoir.</content>
public static partial class PlanJson
{
    private static void WriteDrain(UnitJson json, DrainPlan drain)
    {
        json.Metres("slopeDrop", drain.SlopeDrop);
        json.Metres("mouthOverRim", drain.MouthOverRim);
        json.List(
            "runs",
            drain.Runs,
            run =>
            {
                json.Text("run", run.Run);
                json.Count("row", run.Row);
                json.LitresPerHour("flow", run.Flow);
                json.LitresPerHour("capacity", run.Capacity);
                json.Ratio("margin", run.Margin);
                json.Metres("deepestStation", run.DeepestStation);
                json.Share("deepestFill", run.DeepestRatio);
                json.Yes("pressurised", run.Pressurised);
                json.Yes("freeFall", run.FreeFall);
                json.Litres("stored", run.Stored);
                json.List(
                    "surface",
                    run.Surface,
                    point =>
                    {
                        json.Metres("station", point.Station);
                        json.Metres("invert", point.Invert);
                        json.Metres("depth", point.Depth);
                        json.LitresPerHour("flow", point.Flow);
                        json.MetresPerSecond("velocity", point.Velocity);
                    }
                );
            }
        );
        json.List(
            "potDrains",
            drain.Pots,
            pot =>
            {
                json.Count("row", pot.Row);
                json.Litres("sump", pot.SumpVolume);
                json.Metres("head", pot.Head);
                json.LitresPerHour("most", pot.MostFlow);
                json.Seconds("empties", pot.SecondsToEmpty);
                json.Ordinals("pondingPots", pot.PondingPots);
                json.Count("firstToSpill", pot.FirstToSpill);
                json.Seconds("spillsAfter", pot.SecondsToSpill);
                json.Yes("spillsAtVent", pot.SpillsAtVent);
            }
        );
    }

    private static void WriteReservoir(UnitJson json, ReservoirPlan tank)
    {
        json.Litres("rim", tank.RimVolume);
        json.Litres("full", tank.FullVolume);
        json.Litres("working", tank.WorkingVolume);
        json.Metres("runningLevel", tank.RunningLevel);
        json.Metres("inletCover", tank.InletCover);
        json.Metres("inletCoverWanted", tank.InletCoverWanted);
        json.Litres("backFromLines", tank.BackFromLines);
        json.Litres("backFromDrains", tank.BackFromDrains);
        json.Litres("backFromPots", tank.BackFromPots);
        json.Litres("backInAll", tank.BackInAll);
        json.Litres("freeboard", tank.Freeboard);
        json.Litres("overflow", tank.Overflow);
        json.Metres("siphonsTo", tank.SiphonsTo);
        json.Seconds("emptyWithLineOff", tank.SecondsToEmptyLineOff);
        json.Seconds("emptyWithDrainBlocked", tank.SecondsToEmptyDrainBlocked);
        json.Count("plants", tank.Plants);
        json.LitresPerDay("use", tank.Use);
        json.Days("lasts", tank.Days);
        json.Kilograms("water", tank.WaterMass);
        json.Kilopascals("floorPressure", tank.FloorPressure);
    }
}
