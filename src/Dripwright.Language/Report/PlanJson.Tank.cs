using System.Text.Json;
using Dripwright.Engine;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Nutrients.Correcting;
using Dripwright.Engine.Nutrients.Planning;
using Dripwright.Engine.Tending;
using Dripwright.Engine.Units;

namespace Dripwright.Language.Report;

/// <content>What is said of a tank from its readings, and of its weeks.</content>
public static partial class PlanJson
{
    /// <summary>Writes the steps that bring a tank back.</summary>
    /// <param name="tank">The steps.</param>
    /// <param name="renewals">What is to be drained.</param>
    /// <param name="units">The units its sentences are told in.</param>
    /// <returns>UTF-8 text without a byte-order mark, ending with a line feed.</returns>
    public static byte[] WriteTank(TankPlan tank, IReadOnlyList<TankRenewal> renewals, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(tank);
        ArgumentNullException.ThrowIfNull(renewals);
        var words = new PlanWords(units);
        return Whole(json =>
        {
            json.Texts("cautions", tank.Cautions.Select(words.Of));
            json.List(
                "steps",
                tank.Steps,
                step =>
                {
                    json.Text("does", EnumWords.Of(step.Kind));
                    json.Text("text", words.Of(step.Text));
                    json.Millilitres("volume", step.Volume);
                    json.DecisiemensPerMetre("expected", step.ExpectedEc);
                    json.List("weigh", step.Weigh, salt => WriteWeighed(json, salt));
                }
            );
            json.Litres("drained", tank.Drained);
            json.Litres("water", tank.Water);
            json.Millilitres("stockOfEach", tank.StockEach);
            json.Litres("final", tank.FinalVolume);
            json.DecisiemensPerMetre("final", tank.FinalEc);
            json.Ratio("phBeforeAcid", tank.MixedPH);
            json.Millilitres("acidOrBase", tank.PH?.BottleVolume);
            json.Texts("notes", tank.Notes.Select(words.Of));
            json.List(
                "renewal",
                renewals,
                renewal =>
                {
                    json.Share("drain", renewal.Share);
                    json.Litres("drain", renewal.Volume);
                    json.Text("because", renewal.Because is { } one ? Elements.Key(one) : "");
                    json.Text("text", words.Of(renewal));
                }
            );
        });
    }

    /// <summary>Writes what two readings say.</summary>
    /// <param name="advice">The advice.</param>
    /// <param name="units">The units its sentences are told in.</param>
    /// <returns>UTF-8 text without a byte-order mark, ending with a line feed.</returns>
    public static byte[] WriteUptake(UptakeAdvice advice, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(advice);
        return Whole(json =>
        {
            json.Litres("taken", advice.Taken.Volume);
            json.DecisiemensPerMetre("taken", advice.Taken.DecisiemensPerMetre);
            json.Litres("takenADay", advice.PerDay);
            json.Text("nearest", EnumWords.Of(advice.Nearest));
            json.Litres("fillUp", advice.Volume);
            json.Millilitres("stockOfEach", advice.StockEach);
            json.List("weigh", advice.Salts, salt => WriteWeighed(json, salt));
            json.Texts("text", advice.Lines.Select(new PlanWords(units).Of));
        });
    }

    /// <summary>Writes the loop over the next weeks, every main element of it.</summary>
    /// <param name="plan">A plan with nutrients.</param>
    /// <returns>UTF-8 text without a byte-order mark, ending with a line feed.</returns>
    /// <exception cref="ArgumentException">The plan has none.</exception>
    public static byte[] WriteWeeks(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var nutrients = plan.Nutrients ?? throw new ArgumentException("The plan has no nutrients.", nameof(plan));
        var words = new PlanWords(plan.Rig.Units);
        return Whole(json =>
        {
            WriteOutlook(json, nutrients.Outlook, nutrients.Currency, words);
            json.List(
                "drift",
                nutrients.Outlook?.All ?? [],
                way =>
                {
                    json.Text("name", words.Of(NutrientWords.NameOf(nutrients.Outlook!, way)));
                    json.List(
                        "weeks",
                        way.Evenings.Where(evening => evening.Day % 7 == 0),
                        evening =>
                        {
                            json.Count("day", evening.Day);
                            json.List(
                                "reservoir",
                                NutrientWords.Followed,
                                element =>
                                {
                                    json.Text("element", Elements.Key(element));
                                    json.MilligramsPerLitre(
                                        "held",
                                        Milligrams(element, evening.State.Reservoir[element])
                                    );
                                }
                            );
                        }
                    );
                }
            );
        });
    }

    private static void WriteWeighed(UnitJson json, WeighedSalt salt)
    {
        json.Text("name", salt.Name);
        json.Grams("weigh", salt.Weighed);
        json.Millilitres("measure", salt.Measured);
    }

    private static byte[] Whole(Action<UnitJson> body)
    {
        using var bytes = new MemoryStream();
        using (var writer = new Utf8JsonWriter(bytes, s_options))
        {
            writer.WriteStartObject();
            body(new UnitJson(writer));
            writer.WriteEndObject();
        }

        bytes.WriteByte((byte)'\n');
        return bytes.ToArray();
    }
}
