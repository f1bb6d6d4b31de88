using System.Globalization;
using Dripwright.Engine;
using Dripwright.Engine.Nutrients.Planning;
using Dripwright.Engine.Units;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Nutrients;

/// <summary>Meter, top-up rule, what the weeks bring, the form for readings, and raw coir.</summary>
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
        var flow = new Flow(paper.Portrait, Words.Of("bench.log.title"));
        if (feed.Coir is { } coir)
        {
            Coir(flow, coir, words);
        }

        Meter(flow);
        TopUp(flow, feed);
        if (feed.Outlook is { } outlook)
        {
            Weeks(flow, outlook, words, new PlanWords(plan.Rig.Units));
        }

        flow.NewSheet()
            .Heading(Words.Of("bench.log.readings", feed.Wanted, FeedWords.Number(feed.WantedPH, 1)))
            .Table(Form(words.Us));
        return flow.Build();
    }

    private static void Coir(Flow flow, CoirTreatment coir, QuantityWords words) =>
        flow.Heading(Words.Of("bench.log.coir", words.Volume(coir.Coir)))
            .Paragraph(Words.Of("bench.log.coir.why"))
            .RestartSteps()
            .Step(
                Words.Of(
                    "bench.log.coir.rinse",
                    words.Volume(coir.Rinse),
                    FeedWords.Number(CoirTreatment.RunOffOverWater, 1)
                )
            )
            .Step(
                Words.Of(
                    "bench.log.coir.soak",
                    words.Volume(coir.Soak),
                    FeedWords.Number(coir.CalciumNitrate * 1000, 0),
                    FeedWords.Number(CoirTreatment.SoakStrength, 0)
                ),
                Words.Of("bench.log.coir.caution")
            )
            .Step(Words.Of("bench.log.coir.last", words.Volume(coir.LastRinse)));

    private static void Meter(Flow flow) =>
        flow.Heading(Words.Of("bench.log.meter"))
            .Bullet(Words.Of("bench.log.meter.rinse"))
            .Bullet(Words.Of("bench.log.meter.ph"))
            .Bullet(Words.Of("bench.log.meter.ec"))
            .Bullet(Words.Of("bench.log.meter.units"))
            .Bullet(Words.Of("bench.log.meter.hour"));

    private static void TopUp(Flow flow, NutrientPlan feed)
    {
        var wanted = feed.Wanted.DecisiemensPerMetre;
        var (low, high) = (FeedWords.Number(wanted - 0.2, 1), FeedWords.Number(wanted + 0.2, 1));
        flow.Heading(Words.Of("bench.log.topup"))
            .Bullet(Words.Of("bench.log.topup.over", high))
            .Bullet(Words.Of("bench.log.topup.between", low, high))
            .Bullet(Words.Of(feed.Stock is null ? "bench.log.topup.under" : "bench.log.topup.under.stock", low))
            .Bullet(
                Words.Of(
                    "bench.log.topup.ph",
                    FeedWords.Number(feed.WantedPH + 0.5, 1),
                    FeedWords.Number(feed.WantedPH - 0.5, 1)
                )
            );
    }

    private static void Weeks(Flow flow, NutrientOutlook outlook, QuantityWords words, PlanWords told)
    {
        var table = new Table(
            new(Words.Of("bench.log.weeks.column.way")),
            new(Words.Of("bench.log.weeks.column.ec"), Align.Right),
            new(Words.Of("bench.log.weeks.column.water"), Align.Right),
            new(Words.Of("bench.log.weeks.column.salts"), Align.Right),
            new(Words.Of("bench.log.weeks.column.sodium")),
            new(Words.Of("bench.log.weeks.column.short"))
        );
        foreach (var way in outlook.Ways)
        {
            table.Row(
                told.Of(way.Strategy.Name),
                way.Evenings is [.., var last] ? FeedWords.Number(last.ReservoirEc.DecisiemensPerMetre, 2) : "",
                words.Volume(way.Water),
                FeedWords.Number(way.FertiliserKilograms, 2),
                way.PastLimit.Count > 0
                    ? Words.Of("bench.log.weeks.day", way.PastLimit.Values.Min())
                    : Words.Of("bench.log.weeks.no"),
                told.Of(NutrientWords.RunsShortFirst(way))
            );
        }

        flow.Heading(Words.Of("bench.log.weeks", outlook.Days / 7))
            .Paragraph(Words.Of("bench.log.weeks.how", outlook.Days / 7), leads: true)
            .Table(table)
            .Paragraph(
                outlook.Dumping is { Dumps: > 0 } dumping
                    ? Words.Of(
                        dumping.Dumps == 1 ? "bench.log.weeks.change.one" : "bench.log.weeks.change.many",
                        dumping.Dumps,
                        FeedWords.Number(dumping.LetOutKilograms, 2)
                    )
                    : Words.Of("bench.log.weeks.low")
            );
    }

    private static Table Form(bool us)
    {
        var table = new Table(
            new(Words.Of("bench.log.column.day"), Align.Middle),
            new(Words.Of("bench.log.column.date")),
            new(Words.Of("bench.log.column.ec")),
            new(Words.Of("bench.log.column.ph")),
            new(Words.Of("bench.log.column.level")),
            new(Words.Of(us ? "bench.log.column.fahrenheit" : "bench.log.column.celsius")),
            new(Words.Of("bench.log.column.in")),
            new(Words.Of("bench.log.column.by"))
        );
        for (var day = 1; day <= Days; day++)
        {
            table.Row(Day(day), "………………", "……………", "……………", "……………", "…………", "………………………………", "………");
        }

        return table;
    }

    private static string Day(int number) => number.ToString(CultureInfo.InvariantCulture);
}
