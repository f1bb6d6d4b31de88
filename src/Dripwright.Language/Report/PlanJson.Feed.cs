using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Water;

namespace Dripwright.Language.Report;

/// <content>The feed.</content>
public static partial class PlanJson
{
    private static void WriteFeed(UnitJson json, FeedPlan feed, PlanWords told)
    {
        json.Yes("solved", feed.Solved);
        json.Text("trouble", told.Of(feed.Trouble));
        if (feed.OperatingPoint is { } point)
        {
            json.Object(
                "operatingPoint",
                () =>
                {
                    json.LitresPerHour("flow", point.Flow);
                    json.Metres("head", point.Head);
                    json.Watts("power", point.Power);
                    json.Watts("waterPower", point.WaterPower);
                    json.Hours("runsPerDay", point.HoursPerDay);
                    json.KilowattHours("energyPerDay", point.EnergyPerDayKilowattHours);
                    json.Kelvins("warmingPerDay", point.WarmingPerDay);
                }
            );
        }
        else
        {
            json.Null("operatingPoint");
        }

        json.Metres("staticHead", feed.StaticHead);
        json.LitresPerHour("total", feed.TotalFlow);
        json.LitresPerHour("totalAtLowest", feed.TotalFlowAtLowest);
        json.LitresPerHour("bypass", feed.BypassFlow);
        WriteUniformity(json, feed, told);
        WritePot(json, "weakest", feed.Weakest);
        WritePot(json, "strongest", feed.Strongest);
        json.List("pots", feed.Pots, pot => WritePotFields(json, pot));
        json.List(
            "emitters",
            feed.Emitters,
            emitter =>
            {
                json.Count("row", emitter.Row);
                json.Count("pot", emitter.Pot);
                json.Count("emitter", emitter.Index);
                json.Share("open", emitter.Open);
                json.LitresPerHour("flow", emitter.Flow);
                json.Kilopascals("pressure", emitter.Pressure);
            }
        );
        json.List(
            "stretches",
            feed.Runs,
            run =>
            {
                json.Text("run", run.Run);
                json.Text("from", run.From);
                json.Text("to", run.To);
                json.LitresPerHour("flow", run.Flow);
                json.MetresPerSecond("velocity", run.Velocity);
                json.Metres("headLoss", run.HeadLoss);
            }
        );
        json.List(
            "lines",
            feed.Lines,
            line =>
            {
                json.Count("row", line.Row);
                json.Text("run", line.Run);
                json.MetresPerSecond("endVelocity", line.EndVelocity);
                json.MetresPerSecond("flushVelocity", line.FlushVelocity);
                json.List(
                    "points",
                    line.Points,
                    at =>
                    {
                        json.Metres("station", at.Station);
                        json.Kilopascals("pressure", at.Pressure);
                        json.LitresPerHour("flow", at.Flow);
                    }
                );
            }
        );
        WriteCurve(json, "pumpCurve", feed.PumpCurve);
        WriteCurve(json, "systemCurve", feed.SystemCurve);
        WriteStop(json, feed.Stop);
        json.Object(
            "solution",
            () =>
            {
                json.Ratio("massError", feed.MassResidual);
                json.Metres("energyError", feed.EnergyResidual);
                json.Count("steps", feed.Iterations);
            }
        );
    }

    private static void WriteUniformity(UnitJson json, FeedPlan feed, PlanWords told)
    {
        json.List(
            "uniformity",
            feed.Uniformity,
            measure =>
            {
                json.Text("name", told.Of(measure.Name));
                json.Share("uniformity", measure.Value);
                json.Text("class", EnumWords.Of(measure.Class));
                json.Text("source", measure.Source);
            }
        );
        if (feed.Causes is { } causes)
        {
            json.Object(
                "causes",
                () =>
                {
                    json.Share("pressure", causes.Pressure);
                    json.Share("height", causes.Height);
                    json.Share("manufacture", causes.Manufacture);
                    json.Share("rest", causes.Rest);
                    json.Ratio("variation", causes.CoefficientOfVariation);
                }
            );
        }
        else
        {
            json.Null("causes");
        }

        if (feed.EmptyPots is { } empty)
        {
            json.Object(
                "emptyPots",
                () =>
                {
                    json.Count("emptyPots", empty.EmptyPots);
                    json.LitresPerHour("plantedOpen", empty.PlantedFlowOpen);
                    json.LitresPerHour("plantedShut", empty.PlantedFlowShut);
                    json.LitresPerHour("wastedOpen", empty.WastedOpen);
                }
            );
        }
        else
        {
            json.Null("emptyPots");
        }

        if (feed.Scatter is { } scatter)
        {
            json.Object("scatter", () => WriteScatter(json, scatter));
        }
        else
        {
            json.Null("scatter");
        }
    }

    private static void WriteScatter(UnitJson json, ScatterResult scatter)
    {
        json.Count("draws", scatter.Draws);
        json.Share("chanceOfWeakPot", scatter.ChanceOfWeakPot);
        WriteDraws(json, "weakestOverMean", scatter.WeakestRatio);
        WriteDraws(json, "lowQuarter", scatter.LowQuarter);
        WriteDraws(json, "christiansen", scatter.Christiansen);
        json.ShareEach("chanceOfBeingWeakest", scatter.ChanceOfBeingWeakest);
        json.ShareEach("chanceOfBeingWeak", scatter.ChanceOfBeingWeak);
    }

    private static void WriteDraws(UnitJson json, string name, DrawDistribution draws) =>
        json.Object(
            name,
            () =>
            {
                json.Ratio("mean", draws.Mean);
                json.Ratio("deviation", draws.StandardDeviation);
                json.Ratio("least", draws.Least);
                json.Ratio("quantile05", draws.Quantile05);
                json.Ratio("quantile25", draws.Quantile25);
                json.Ratio("median", draws.Median);
                json.Ratio("quantile75", draws.Quantile75);
                json.Ratio("quantile95", draws.Quantile95);
                json.Ratio("greatest", draws.Greatest);
                json.Object(
                    "bins",
                    () =>
                    {
                        json.Ratio("from", draws.Bins.From);
                        json.Ratio("to", draws.Bins.To);
                        json.Ordinals("counts", draws.Bins.Counts);
                    }
                );
            }
        );

    private static void WritePot(UnitJson json, string name, PotFlow? pot)
    {
        if (pot is null)
        {
            json.Null(name);
        }
        else
        {
            json.Object(name, () => WritePotFields(json, pot));
        }
    }

    private static void WritePotFields(UnitJson json, PotFlow pot)
    {
        json.Count("row", pot.Row);
        json.Count("pot", pot.Pot);
        json.Yes("planted", pot.Planted);
        json.LitresPerHour("flow", pot.Flow);
        json.Kilopascals("pressure", pot.Pressure);
    }

    private static void WriteCurve(UnitJson json, string name, IReadOnlyList<CurvePoint> curve) =>
        json.List(
            name,
            curve,
            point =>
            {
                json.LitresPerHour("flow", point.Flow);
                json.Metres("head", point.Head);
            }
        );

    private static void WriteStop(UnitJson json, StopEffect stop) =>
        json.Object(
            "pumpStop",
            () =>
            {
                json.Litres("lines", stop.LineVolume);
                json.Litres("throughEmitters", stop.ThroughEmitters);
                json.Litres("backToTank", stop.BackToTank);
                json.Litres("stays", stop.Stays);
                json.Ordinals("lowRows", stop.LowRows);
                json.Yes("siphons", stop.Siphons);
            }
        );
}
