using Dripwright.Engine;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Nutrients.Loop;
using Dripwright.Engine.Nutrients.Planning;
using Dripwright.Engine.Nutrients.Recipe;
using Dripwright.Engine.Units;

namespace Dripwright.Language.Report;

/// <content>What the reservoir is filled with.</content>
public static partial class PlanJson
{
    // Prices of salts are the grower's own, and no currency is asked for.
    private const string YourMoney = "";

    private static void WriteNutrients(UnitJson json, NutrientPlan feed)
    {
        json.Litres("reservoir", feed.Volume);
        json.DecisiemensPerMetre("wanted", feed.Wanted.DecisiemensPerMetre);
        json.DecisiemensPerMetre("reached", feed.Ec.DecisiemensPerMetre);
        json.DecisiemensPerMetre("cationRule", feed.CationRule.DecisiemensPerMetre);
        json.DecisiemensPerMetre("water", feed.FilledEc.DecisiemensPerMetre);
        json.Ratio("wantedPh", feed.WantedPH);
        json.Ratio("restingPh", feed.PH);
        json.Millilitres("acid", feed.AcidVolume);
        json.Text("target", feed.Stage.Target);
        json.Text("targetSource", feed.Recipe.Job.Target.Source);
        json.Litres("batch", feed.Recipe.Job.Volume);
        json.List(
            "weigh",
            feed.Recipe.Lines,
            line => WriteLine(json, line.Salt.Key, line.Salt.Name, line.Weighed, line.Measured)
        );
        json.List("elements", feed.Recipe.Elements, element => WriteElement(json, element));
        json.Share("ammonium", feed.Recipe.AmmoniumShare);
        json.Valued("batchCost", feed.Recipe.Cost, YourMoney);
        json.Texts("unpriced", feed.Recipe.Unpriced);
        json.List(
            "cures",
            feed.Cures,
            cure =>
            {
                json.Text("element", Forms.ShortName(cure.Constituent));
                json.Text("salt", cure.Salt.Key);
                json.Share("missBefore", cure.MissBefore);
                json.Share("missAfter", cure.MissAfter);
            }
        );
        WriteStock(json, feed.Stock);
        WriteOutlook(json, feed.Outlook);
        if (feed.Coir is { } coir)
        {
            json.Object(
                "rawCoir",
                () =>
                {
                    json.Litres("coir", coir.Coir);
                    json.Litres("rinse", coir.Rinse);
                    json.Litres("soak", coir.Soak);
                    json.Grams("calciumNitrate", coir.CalciumNitrate);
                    json.Litres("lastRinse", coir.LastRinse);
                }
            );
        }
        else
        {
            json.Null("rawCoir");
        }
    }

    private static void WriteLine(UnitJson json, string key, string name, double weighed, double? measured)
    {
        json.Text("salt", key);
        json.Text("name", name);
        json.Grams("weigh", weighed);
        json.Millilitres("measure", measured);
    }

    private static void WriteElement(UnitJson json, ElementResult element)
    {
        json.Text("element", Forms.ShortName(element.Constituent));
        json.MilligramsPerLitre("wanted", Milligrams(element.Constituent, element.Wanted));
        json.MilligramsPerLitre("reached", Milligrams(element.Constituent, element.Result));
        json.MilligramsPerLitre("weighed", Milligrams(element.Constituent, element.Weighed));
        json.MilligramsPerLitre("fromWater", Milligrams(element.Constituent, element.FromWater));
        json.Share("tolerance", element.Tolerance);
        json.Text("verdict", EnumWords.Of(element.Verdict));
    }

    private static double? Milligrams(Constituent constituent, double? concentration) =>
        concentration is { } amount ? Forms.ToMilligramsPerLitre(constituent, amount) : null;

    private static void WriteStock(UnitJson json, StockPlan? stock)
    {
        if (stock is null)
        {
            json.Null("stock");
            return;
        }

        json.Object(
            "stock",
            () =>
            {
                json.Ratio("partsOfFeed", stock.Job.PartsOfFeed);
                json.Ratio("mostPartsOfFeed", stock.MostParts);
                json.Share("injector", stock.InjectorPercent / 100);
                json.List(
                    "cans",
                    stock.Cans,
                    can =>
                    {
                        json.Text("can", can.Name);
                        json.Litres("volume", can.Volume);
                        json.Share("fullness", can.Fullness);
                        json.Yes("keeps", can.Keeps);
                        json.List(
                            "weigh",
                            can.Lines,
                            line => WriteLine(json, line.Salt.Key, line.Salt.Name, line.Weighed, line.Measured)
                        );
                    }
                );
            }
        );
    }

    private static void WriteOutlook(UnitJson json, NutrientOutlook? outlook)
    {
        if (outlook is null)
        {
            json.Null("outlook");
            return;
        }

        json.Object(
            "outlook",
            () =>
            {
                json.Count("days", outlook.Days);
                json.MilligramsPerLitre(
                    "sodiumLimit",
                    Forms.ToMilligramsPerLitre(Constituent.Sodium, outlook.Limit.Classic)
                );
                json.List("ways", outlook.Ways, way => WriteWay(json, way));
                if (outlook.Dumping is { } dumping)
                {
                    json.Object("dumping", () => WriteWay(json, dumping));
                }
                else
                {
                    json.Null("dumping");
                }

                json.List(
                    "hidden",
                    outlook.Hidden,
                    ion =>
                    {
                        json.Text("element", Forms.ShortName(ion.Constituent));
                        json.MilligramsPerLitre("held", Milligrams(ion.Constituent, ion.Held));
                        json.MilligramsPerLitre("expected", Milligrams(ion.Constituent, ion.Expected));
                    }
                );
            }
        );
    }

    private static void WriteWay(UnitJson json, LoopOutcome way)
    {
        json.Text("name", way.Strategy.Name);
        json.Litres("water", way.Water);
        json.Litres("letOut", way.LetOut);
        json.Count("dumps", way.Dumps);
        json.Kilograms("salts", way.FertiliserKilograms);
        json.Kilograms("saltsLetOut", way.LetOutKilograms);
        json.Valued("cost", way.Cost, YourMoney);
        json.Valued("costLetOut", way.LetOutCost, YourMoney);
        json.Text("firstInWant", NutrientWords.FirstInWant(way));
        json.Text(
            "sodiumPastLimit",
            way.PastLimit.TryGetValue(Constituent.Sodium, out var day) ? $"day {QuantityWords.Count(day)}" : "never"
        );
        json.Text("stopped", way.Stopped is { } why ? $"{why.What} {why.Remedy}" : "");
        json.List(
            "weeks",
            way.Evenings.Where(evening => evening.Day % 7 == 0),
            evening =>
            {
                json.Count("day", evening.Day);
                json.DecisiemensPerMetre("reservoir", evening.ReservoirEc.DecisiemensPerMetre);
                json.DecisiemensPerMetre("pots", evening.PotEc.DecisiemensPerMetre);
                json.MilligramsPerLitre(
                    "sodiumInPots",
                    Milligrams(Constituent.Sodium, evening.State.Pots[Constituent.Sodium])
                );
            }
        );
    }
}
