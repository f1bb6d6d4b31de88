using System.Globalization;
using Dripwright.Engine;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Nutrients.Correcting;
using Dripwright.Engine.Nutrients.Planning;
using Dripwright.Engine.Nutrients.Recipe;
using Dripwright.Engine.Units;
using Dripwright.Language;

namespace Dripwright.Screen;

/// <summary>A nutrient solution line by line.</summary>
internal static class FeedingWords
{
    /// <summary>What to weigh and what comes of it.</summary>
    public static IEnumerable<string> Recipe(Plan plan)
    {
        var feed = plan.Nutrients!;
        yield return $"Nutrients for {Litres(feed.Volume)} of reservoir: EC {feed.Ec} (target {feed.Wanted}; your water alone {feed.FilledEc})";
        yield return feed.PH is { } ph
            ? $"pH {Number(ph, "0.0")} after a day of bubbling (target {Number(feed.WantedPH, "0.0")})"
            : "pH: cannot be computed for this water";
        if (feed.Stock is { } stock)
        {
            foreach (var can in stock.Cans)
            {
                yield return "";
                yield return $"Stock tank {can.Name}, filled up to {Litres(can.Volume)}, 1:{Number(stock.Job.PartsOfFeed, "0")}:";
                foreach (var line in can.Lines)
                {
                    yield return Line(line.Salt.Name, line.Weighed, line.Measured);
                }
            }

            yield return "";
            yield return $"For a full reservoir: {Number(feed.Volume * stock.DosePerLitre * 1e6, "0")} mL from each stock tank, A first, B ten minutes later.";
        }
        else
        {
            yield return "";
            yield return "Into the reservoir:";
            foreach (var line in feed.Recipe.Lines)
            {
                yield return Line(line.Salt.Name, line.Weighed, line.Measured);
            }
        }

        yield return "";
        yield return "Element    target   reached   from water  mg/L";
        foreach (var element in feed.Recipe.Elements.Where(one => one.Wanted is not null))
        {
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"{Forms.ShortName(element.Constituent), -8}{Milligrams(element.Constituent, element.Wanted!.Value), 9}{Milligrams(element.Constituent, element.Result), 10}{Milligrams(element.Constituent, element.FromWater), 13}{(element.Verdict is ElementVerdict.Reached ? "" : "  missed")}"
            );
        }

        foreach (var cure in feed.Cures)
        {
            yield return $"{Forms.ShortName(cure.Constituent)} would come closer to its target with {cure.Salt.Name}.";
        }

        foreach (var finding in new PlanWords(UnitSystem.Metric).Of(feed.Findings))
        {
            yield return "";
            yield return $"{finding.Level}: {finding.What} {finding.Value}; {finding.Limit}.";
            yield return $"  {finding.Remedy}";
        }

        yield return "";
        yield return "Acid into water, never water into acid. Goggles and gloves. Nitrates away from fuel. Keep from children.";
    }

    /// <summary>Steps that bring a reservoir back to its target.</summary>
    public static IEnumerable<string> Steps(TankPlan tank, IReadOnlyList<TankRenewal> renewals)
    {
        foreach (var caution in tank.Cautions)
        {
            yield return $"Caution: {caution}";
        }

        foreach (var (index, step) in tank.Steps.Index())
        {
            yield return $"{(index + 1).ToString(CultureInfo.InvariantCulture)}. {step.Text}";
            foreach (var salt in step.Weigh)
            {
                yield return $"   - {salt.Text}";
            }
        }

        foreach (var note in tank.Notes)
        {
            yield return note;
        }

        yield return "";
        yield return "What adding salts or water cannot fix:";
        foreach (var renewal in renewals)
        {
            yield return renewal.Text;
        }
    }

    /// <summary>What two readings say.</summary>
    public static IEnumerable<string> Uptake(UptakeAdvice advice) =>
        advice.Lines.Concat(advice.Salts.Select(salt => $"   - {salt.Text}"));

    /// <summary>The weeks ahead.</summary>
    public static IEnumerable<string> Weeks(Plan plan)
    {
        if (plan.Nutrients!.Outlook is not { } outlook)
        {
            yield return "There is no forecast: no plants, or they drink all that is dripped, or the water alone has a higher EC than the target.";
            yield break;
        }

        var weeks = (outlook.Days / 7).ToString(CultureInfo.InvariantCulture);
        yield return $"{weeks} weeks, if the plants take up what recirculating systems are usually fed:";
        yield return "";
        yield return "Topped up with        EC at end  water L  salts kg  sodium past  runs short";
        foreach (var way in outlook.Ways)
        {
            var end = way.Evenings is [.., var last] ? Number(last.ReservoirEc.DecisiemensPerMetre, "0.00") : "-";
            var past =
                way.PastLimit.Count > 0
                    ? "day " + way.PastLimit.Values.Min().ToString(CultureInfo.InvariantCulture)
                    : "no";
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"{way.Strategy.Name, -21}{end, 10}{Number(way.Water * 1000, "0"), 9}{Number(way.FertiliserKilograms, "0.00"), 10}  {past, -12} {NutrientWords.FirstInWant(way)}"
            );
        }

        yield return "";
        yield return outlook.Dumping is { Dumps: > 0 } dumping
            ? $"To stay under the sodium limit while the EC is held: change the solution {Times(dumping.Dumps)}, {Litres(dumping.LetOut)} with {Number(dumping.LetOutKilograms, "0.00")} kg of salts in all."
            : "Sodium stays under the crop's limit while the EC is held.";
        if (outlook.Hidden is [var first, ..])
        {
            yield return $"What EC hides most at the end: {Forms.ShortName(first.Constituent)} at {Milligrams(first.Constituent, first.Held)} mg/L where a fresh solution has {Milligrams(first.Constituent, first.Expected)}.";
        }
    }

    private static string Times(int count) =>
        count == 1 ? "once" : count.ToString(CultureInfo.InvariantCulture) + " times";

    private static string Line(string name, double weighed, double? measured) =>
        measured is { } volume
            ? $"  {Number(volume * 1e6, "0.0"), 9} mL  {name}"
            : $"  {Number(weighed * 1000, "0.0##"), 9} g   {name}";

    private static string Litres(double cubicMetres) => $"{Number(cubicMetres * 1000, "0.#")} L";

    private static string Milligrams(Constituent constituent, double amount) =>
        Number(Forms.ToMilligramsPerLitre(constituent, amount), amount >= 0.01 ? "0.0" : "0.000");

    private static string Number(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
