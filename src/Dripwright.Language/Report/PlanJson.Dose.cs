using Dripwright.Engine.Water;

namespace Dripwright.Language.Report;

/// <content>What each plant gets in a day.</content>
public static partial class PlanJson
{
    private static void WriteDose(UnitJson json, DosePlan dose)
    {
        json.Ratio("waterings", dose.Waterings);
        json.Seconds("fillTime", dose.FillTime);
        json.List(
            "pots",
            dose.Pots,
            pot =>
            {
                json.Count("row", pot.Row);
                json.Count("pot", pot.Pot);
                json.Count("plants", pot.Plants);
                json.Litres("given", pot.Given);
                json.Litres("hotDay", pot.HotDay);
                json.Litres("meanDay", pot.MeanDay);
                json.Share("drain", pot.DrainShare);
            }
        );
    }
}
