using System.Globalization;
using Dripwright.Engine;
using Dripwright.Engine.Catalogue.Salts;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Nutrients.Correcting;
using Dripwright.Engine.Nutrients.Planning;
using Dripwright.Engine.Nutrients.Recipe;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Tending;
using Dripwright.Engine.Units;
using Dripwright.Language;

namespace Dripwright.Screen;

/// <summary>A nutrient solution line by line.</summary>
internal static class NutrientLines
{
    // Columns of the tables: the widest names stand in them.
    private const int Amount = 13;
    private const int Element = 13;
    private const int Number = 10;
    private const int Way = 22;

    /// <summary>What to weigh and what comes of it.</summary>
    public static IEnumerable<string> Recipe(Plan plan)
    {
        var nutrients = plan.Nutrients!;
        var told = new PlanWords(plan.Rig.Units);
        yield return Words.Of(
            "screen.mix.title",
            told.Of(Measured.Volume(nutrients.Volume)),
            told.Of(nutrients.Ec.Measured),
            told.Of(nutrients.Wanted.Measured),
            told.Of(nutrients.FilledEc.Measured)
        );
        yield return nutrients.PH is { } ph
            ? Words.Of("screen.mix.ph", told.Of(Measured.PH(ph)), told.Of(Measured.PH(nutrients.WantedPH)))
            : Words.Of("screen.mix.ph.none");
        yield return "";
        foreach (var line in nutrients.Stock is { } stock ? Stock(nutrients, stock, told) : Tank(nutrients, told))
        {
            yield return line;
        }

        yield return "";
        foreach (var line in ElementTable(nutrients, told))
        {
            yield return line;
        }

        foreach (var finding in told.Of(nutrients.Findings))
        {
            yield return "";
            yield return Words.Of(
                "screen.mix.finding",
                Words.Of($"screen.mix.level.{finding.Level}"),
                finding.What,
                finding.Value,
                finding.Limit
            );
            yield return $"  {finding.Remedy}";
        }

        yield return "";
        yield return Words.Of("screen.mix.caution");
    }

    /// <summary>Steps that bring a tank back.</summary>
    /// <param name="tank">The steps.</param>
    /// <param name="renewals">What is to be drained.</param>
    /// <param name="units">The units to tell them in.</param>
    public static IEnumerable<string> Steps(TankPlan tank, IReadOnlyList<TankRenewal> renewals, UnitSystem units)
    {
        var told = new PlanWords(units);
        foreach (var caution in tank.Cautions)
        {
            yield return Words.Of("screen.adjust.caution", told.Of(caution));
        }

        foreach (var (index, step) in tank.Steps.Index())
        {
            yield return $"{QuantityWords.Count(index + 1)}. {told.Of(step.Text)}";
            foreach (var salt in step.Weigh)
            {
                yield return $"   - {told.Of(salt.Text)}";
            }
        }

        foreach (var note in tank.Notes)
        {
            yield return told.Of(note);
        }

        yield return "";
        yield return Words.Of("screen.adjust.drain");
        foreach (var renewal in renewals)
        {
            yield return told.Of(renewal);
        }
    }

    /// <summary>What two readings say.</summary>
    /// <param name="advice">The advice.</param>
    /// <param name="units">The units to tell it in.</param>
    public static IEnumerable<string> Uptake(UptakeAdvice advice, UnitSystem units)
    {
        var told = new PlanWords(units);
        return advice.Lines.Select(told.Of).Concat(advice.Salts.Select(salt => $"   - {told.Of(salt.Text)}"));
    }

    /// <summary>The weeks ahead.</summary>
    public static IEnumerable<string> Weeks(Plan plan)
    {
        var told = new PlanWords(plan.Rig.Units);
        if (plan.Nutrients!.Outlook is not { } outlook)
        {
            yield return Words.Of("screen.ahead.none");
            yield break;
        }

        yield return Words.Of("screen.ahead.title", outlook.Days / 7);
        yield return "";
        yield return Row(
            Words.Of("screen.ahead.way"),
            Words.Of("screen.ahead.ec"),
            Words.Of("screen.ahead.water"),
            Words.Of("screen.ahead.salts"),
            Words.Of("screen.ahead.sodium"),
            Words.Of("screen.ahead.short")
        );
        foreach (var way in outlook.Ways)
        {
            yield return Row(
                told.Of(way.Strategy.Name),
                way.Evenings is [.., var last] ? Fixed(last.ReservoirEc.DecisiemensPerMetre, "0.00") : "-",
                told.Of(Measured.Volume(way.Water)),
                $"{Fixed(way.FertiliserKilograms, "0.00")} kg",
                way.PastLimit.Count > 0
                    ? Words.Of("nutrients.day", way.PastLimit.Values.Min())
                    : Words.Of("nutrients.never"),
                told.Of(NutrientWords.RunsShortFirst(way))
            );
        }

        yield return "";
        yield return Change(outlook, told);
        if (outlook.Hidden is [var first, ..])
        {
            yield return Words.Of(
                "screen.ahead.hidden",
                told.Of(Elements.Name(first.Constituent)),
                told.Of(Elements.Amount(first.Constituent, first.Held)),
                told.Of(Elements.Amount(first.Constituent, first.Expected))
            );
        }
    }

    private static IEnumerable<string> Stock(NutrientPlan nutrients, StockPlan stock, PlanWords told)
    {
        var step = nutrients.Recipe.Job.Scale.Step;
        foreach (var can in stock.Cans)
        {
            yield return Words.Of(
                "screen.mix.stock",
                can.Name,
                told.Of(Measured.Volume(can.Volume)),
                told.Of(Measured.Number(stock.Job.PartsOfFeed))
            );
            foreach (var line in can.Lines)
            {
                yield return Line(line.Salt, line.Weighed, line.Measured, step, told);
            }

            yield return "";
        }

        yield return Words.Of(
            "screen.mix.stock.dose",
            told.Of(Measured.MeasuredOut(nutrients.Volume * stock.DosePerLitre))
        );
    }

    private static IEnumerable<string> Tank(NutrientPlan nutrients, PlanWords told) =>
        nutrients
            .Recipe.Lines.Select(line =>
                Line(line.Salt, line.Weighed, line.Measured, nutrients.Recipe.Job.Scale.Step, told)
            )
            .Prepend(Words.Of("screen.mix.tank"));

    // A weight that the scale cannot show is not told as nothing: the findings say what to do.
    private static string Line(Salt salt, double weighed, double? measured, double step, PlanWords told)
    {
        var amount =
            weighed <= 0 ? Words.Of("screen.mix.too-little")
            : measured is { } volume ? told.Of(Measured.MeasuredOut(volume))
            : told.Of(Measured.Weighed(weighed, step));
        return $"{amount, Amount}  {salt.Name}";
    }

    private static IEnumerable<string> ElementTable(NutrientPlan nutrients, PlanWords told)
    {
        var isTotal = nutrients.Recipe.Job.Target.NitrogenIsSum;
        yield return Row(
            Words.Of("screen.mix.element"),
            Words.Of("screen.mix.target"),
            Words.Of("screen.mix.reached"),
            Words.Of("screen.mix.from-water"),
            "mg/L"
        );
        foreach (var element in nutrients.Recipe.Elements.Where(one => one.Wanted is not null))
        {
            yield return Row(
                told.Of(Elements.Short(element.Constituent, isTotal)),
                Milligrams(element.Constituent, element.Wanted!.Value),
                Milligrams(element.Constituent, element.Result),
                Milligrams(element.Constituent, element.FromWater),
                element.Verdict is ElementVerdict.Reached ? "" : Words.Of("screen.mix.off")
            );
        }
    }

    private static string Row(string name, string target, string reached, string water, string remark) =>
        $"{name, -Element}{target, Number}{reached, Number}{water, Amount}  {remark}".TrimEnd();

    private static string Row(string way, string ec, string water, string salts, string sodium, string runsShort) =>
        $"{way, -Way}{ec, 7}{water, Number}{salts, Number}  {sodium, -Number}{runsShort}".TrimEnd();

    private static string Change(NutrientOutlook outlook, PlanWords told) =>
        outlook.Dumping is { Dumps: > 0 } changing
            ? told.Of(
                Phrase.Counted(
                    "screen.ahead.change",
                    changing.Dumps,
                    Measured.Volume(changing.LetOut),
                    Measured.Mass(changing.LetOutKilograms)
                )
            )
            : Words.Of("screen.ahead.change.none");

    private static string Milligrams(Constituent constituent, double amount) =>
        Fixed(
            Forms.ToMilligramsPerLitre(constituent, amount),
            amount <= 0 ? "0"
                : amount >= 0.01 ? "0.0"
                : "0.000"
        );

    private static string Fixed(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
