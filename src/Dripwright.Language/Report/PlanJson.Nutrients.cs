using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Nutrients.Loop;
using Dripwright.Engine.Nutrients.Planning;
using Dripwright.Engine.Nutrients.Recipe;

namespace Dripwright.Language.Report;

/// <content>What the reservoir is filled with.</content>
public static partial class PlanJson
{
    private static void WriteNutrients(UnitJson json, NutrientPlan nutrients, PlanWords words)
    {
        var isTotal = nutrients.Recipe.Job.Target.NitrogenIsSum;
        json.Text("crop", nutrients.Crop.Key);
        json.Litres("reservoir", nutrients.Volume);
        json.DecisiemensPerMetre("wanted", nutrients.Wanted.DecisiemensPerMetre);
        json.DecisiemensPerMetre("reached", nutrients.Ec.DecisiemensPerMetre);
        json.DecisiemensPerMetre("cationRule", nutrients.CationRule.DecisiemensPerMetre);
        json.DecisiemensPerMetre("water", nutrients.FilledEc.DecisiemensPerMetre);
        json.Ratio("wantedPh", nutrients.WantedPH);
        json.Ratio("restingPh", nutrients.PH);
        json.Millilitres("acid", nutrients.AcidVolume);
        json.Text("target", nutrients.Stage.Target);
        json.Text("targetSource", words.Of(nutrients.TargetSource));
        json.Litres("batch", nutrients.Recipe.Job.Volume);
        json.List(
            "weigh",
            nutrients.Recipe.Lines,
            line => WriteLine(json, line.Salt.Key, line.Salt.Name, line.Weighed, line.Measured)
        );
        json.List("elements", nutrients.Recipe.Elements, element => WriteElement(json, element, isTotal));
        json.Share("ammonium", nutrients.Recipe.AmmoniumShare);
        json.Valued("batchCost", nutrients.Recipe.Cost, nutrients.Currency);
        json.Texts("unpriced", nutrients.Recipe.Unpriced);
        json.List(
            "cures",
            nutrients.Cures,
            cure =>
            {
                json.Text("element", Elements.Key(cure.Constituent, isTotal));
                json.Text("salt", cure.Salt.Key);
                json.Share("missBefore", cure.MissBefore);
                json.Share("missAfter", cure.MissAfter);
            }
        );
        WriteStock(json, nutrients.Stock);
        WriteOutlook(json, nutrients.Outlook, nutrients.Currency, words);
        if (nutrients.Coir is { } coir)
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

    private static void WriteElement(UnitJson json, ElementResult element, bool isTotal)
    {
        json.Text("element", Elements.Key(element.Constituent, isTotal));
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

    private static void WriteOutlook(UnitJson json, NutrientOutlook? outlook, string currency, PlanWords words)
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
                json.List("ways", outlook.Ways, way => WriteWay(json, way, currency, words));
                if (outlook.Dumping is { } dumping)
                {
                    json.Object("changing", () => WriteWay(json, dumping, currency, words));
                }
                else
                {
                    json.Null("changing");
                }

                json.List(
                    "hidden",
                    outlook.Hidden,
                    ion =>
                    {
                        json.Text("element", Elements.Key(ion.Constituent));
                        json.MilligramsPerLitre("held", Milligrams(ion.Constituent, ion.Held));
                        json.MilligramsPerLitre("expected", Milligrams(ion.Constituent, ion.Expected));
                    }
                );
            }
        );
    }

    private static void WriteWay(UnitJson json, LoopOutcome way, string currency, PlanWords words)
    {
        json.Text("name", words.Of(way.Strategy.Name));
        json.Litres("water", way.Water);
        json.Litres("drained", way.LetOut);
        json.Count("changes", way.Dumps);
        json.Kilograms("salts", way.FertiliserKilograms);
        json.Kilograms("saltsDrained", way.LetOutKilograms);
        json.Valued("cost", way.Cost, currency);
        json.Valued("costDrained", way.LetOutCost, currency);
        json.Text("runsShortFirst", words.Of(NutrientWords.RunsShortFirst(way)));
        json.Text(
            "sodiumPastLimit",
            way.PastLimit.TryGetValue(Constituent.Sodium, out var day)
                ? Words.Of("nutrients.day", day)
                : Words.Of("nutrients.never")
        );
        json.Text("stopped", way.Stopped is { } why ? words.Of(why) : "");
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
