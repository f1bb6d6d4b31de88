using System.Globalization;
using Dripwright.Engine;
using Dripwright.Engine.Nutrients.Planning;
using Dripwright.Engine.Units;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Nutrients;

/// <summary>Pen, top-up rule, what the weeks bring, the form for readings, and raw coir.</summary>
public static class TankLog
{
    private const int Days = 28;

    /// <summary>The sheets; none where no feed is asked for.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="paper">Size of the sheets; they stand upright.</param>
    public static IReadOnlyList<SheetDraft> Draw(Plan plan, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(paper);
        if (plan.Nutrients is not { } feed)
        {
            return [];
        }

        var words = new QuantityWords(plan.Rig.Units);
        var flow = new Flow(paper.Portrait, "Keeping the feed");
        if (feed.Coir is { } coir)
        {
            Coir(flow, coir, words);
        }

        ThePen(flow);
        TopUp(flow, feed);
        if (feed.Outlook is { } outlook)
        {
            Weeks(flow, outlook, words);
        }

        flow.NewSheet()
            .Heading($"Readings: wanted {feed.Wanted} and pH {FeedWords.Number(feed.WantedPH, 1)}")
            .Table(Form(words.Us));
        return flow.Build();
    }

    private static void Coir(Flow flow, CoirTreatment coir, QuantityWords words) =>
        flow.Heading($"Raw coir first: {words.Volume(coir.Coir)} of it")
            .Paragraph(
                "Raw coir holds potassium and sodium and trades them for the calcium of your first feed. Common practice, by volume; the "
                    + "run-off's EC decides, not the clock."
            )
            .RestartSteps()
            .Step(
                $"Wet it, and rinse with about {words.Volume(coir.Rinse)} of water, until what runs off reads no more than "
                    + $"{FeedWords.Number(CoirTreatment.RunOffOverWater, 1)} dS/m over the water itself."
            )
            .Step(
                $"Soak it overnight in {words.Volume(coir.Soak)} of water with {FeedWords.Number(coir.CalciumNitrate * 1000, 0)} g of calcium "
                    + $"nitrate ({FeedWords.Number(CoirTreatment.SoakStrength, 0)} g in a litre).",
                "Calcium nitrate feeds a fire: keep it from fuel and sawdust. Gloves and goggles."
            )
            .Step($"Let it drain and rinse with {words.Volume(coir.LastRinse)} of water. Then fill the pots.");

    private static void ThePen(Flow flow) =>
        flow.Heading("The pen")
            .Bullet(
                "Rinse it with clean water before and after, and keep the pH bulb wet in storage solution, never in pure water."
            )
            .Bullet("pH: every two weeks in fresh buffers 7.01, then 4.01, at room temperature.")
            .Bullet(
                "EC: every month in the 1.413 dS/m standard (0.01 mol/L potassium chloride, 25 °C); off by more than 3 %: calibrate."
            )
            .Bullet(
                "Write strength as dS/m, which is mS/cm. A pen that shows ppm: divide by its own scale, 500, 640 or 700, which stands in its leaflet."
            )
            .Bullet("Read at the same hour, after ten minutes of stirring. Common practice.");

    private static void TopUp(Flow flow, NutrientPlan feed)
    {
        var wanted = feed.Wanted.DecisiemensPerMetre;
        var (low, high) = (FeedWords.Number(wanted - 0.2, 1), FeedWords.Number(wanted + 0.2, 1));
        flow.Heading("Topping up")
            .Bullet($"EC over {high}: top up with plain water. The plants drink more than they eat.")
            .Bullet($"EC from {low} to {high}: top up with half strength.")
            .Bullet(
                $"EC under {low}: top up with full strength{(feed.Stock is null ? "" : ", A first, B after ten minutes")}."
            )
            .Bullet(
                $"pH over {FeedWords.Number(feed.WantedPH + 0.5, 1)} or under {FeedWords.Number(feed.WantedPH - 0.5, 1)} two days running: "
                    + "correct it in small steps, two thirds of what a bucket test asks for, and read again."
            );
    }

    private static void Weeks(Flow flow, NutrientOutlook outlook, QuantityWords words)
    {
        var table = new Table(
            new("Topped up with"),
            new("EC, dS/m", Align.Right),
            new("Water", Align.Right),
            new("Salts, kg", Align.Right),
            new("Too much sodium"),
            new("First in want")
        );
        foreach (var way in outlook.Ways)
        {
            table.Row(
                way.Strategy.Name,
                way.Evenings is [.., var last] ? FeedWords.Number(last.ReservoirEc.DecisiemensPerMetre, 2) : "",
                words.Volume(way.Water),
                FeedWords.Number(way.FertiliserKilograms, 2),
                way.PastLimit.Count > 0 ? $"day {Day(way.PastLimit.Values.Min())}" : "no",
                NutrientWords.FirstInWant(way)
            );
        }

        flow.Heading($"The next {Day(outlook.Days / 7)} weeks, if the plants take what closed systems are fed")
            .Paragraph(
                $"From a fresh tank; EC as it stands after {Day(outlook.Days / 7)} weeks. Your own readings are better than this.",
                leads: true
            )
            .Table(table)
            .Paragraph(
                outlook.Dumping is { Dumps: > 0 } dumping
                    ? $"To stay under the sodium limit with the EC held, dump and refill {Day(dumping.Dumps)} times; that lets out "
                        + $"{FeedWords.Number(dumping.LetOutKilograms, 2)} kg of salts. Give it to garden plants, away from drains and ponds."
                    : "Sodium stays under the crop's limit."
            );
    }

    private static Table Form(bool us)
    {
        var table = new Table(
            new("Day", Align.Middle),
            new("Date"),
            new("EC dS/m"),
            new("pH"),
            new("Level"),
            new(us ? "Water °F" : "Water °C"),
            new("Put in"),
            new("By")
        );
        for (var day = 1; day <= Days; day++)
        {
            table.Row(Day(day), "………………", "……………", "……………", "……………", "…………", "………………………………", "………");
        }

        return table;
    }

    private static string Day(int number) => number.ToString(CultureInfo.InvariantCulture);
}
