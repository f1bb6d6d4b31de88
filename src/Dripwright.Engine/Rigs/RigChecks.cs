using System.Globalization;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Rigs;

/// <summary>What no single field can show: fields that contradict each other, and bounds on the rig as a whole.</summary>
/// <remarks>A rig that merely works badly passes: that is for the plan to say. What lies in a faulty field is not judged.</remarks>
internal static class RigChecks
{
    /// <summary>Most pots of all rows together.</summary>
    public const int MostPots = 5000;

    /// <summary>Most stand modules of all rows together.</summary>
    public const int MostModules = 10_000;

    /// <summary>Judges a rig.</summary>
    /// <param name="rig">The rig.</param>
    /// <param name="catalogue">The catalogue.</param>
    /// <param name="faults">What was at fault so far.</param>
    /// <param name="say">Told path, what was found and what is expected.</param>
    public static void All(Rig rig, PartsCatalogue catalogue, FaultList faults, Action<string, Phrase, Phrase> say)
    {
        // Judged before any of these checks adds a fault of its own.
        var good = new HashSet<string>(
            new[] { "rows", "pump", "onHand", "nutrients" }.Where(path => !faults.Touch(path)),
            StringComparer.Ordinal
        );
        if (good.Contains("rows"))
        {
            // Without a bound on the pots, judging who stands where has none either.
            if (Totals(rig, say))
            {
                Plantings(rig, say);
            }
        }
        if (good.Contains("pump"))
        {
            Curve(rig.Pump, say);
        }
        if (good.Contains("onHand"))
        {
            Lengths(rig, catalogue, say);
        }
        if (good.Contains("nutrients"))
        {
            NutrientChecks.All(rig.Nutrients, say);
        }
    }

    private static bool Totals(Rig rig, Action<string, Phrase, Phrase> say)
    {
        var pots = rig.Rows.Sum(row => (long)row.Count * row.Pots);
        if (pots > MostPots)
        {
            say("rows", Phrase.Of("fault.all-pots", Whole(pots)), Phrase.Of("fault.at-most", MostPots));
        }
        var modules = rig.Rows.Sum(row =>
            row.Count * (row.Modules ?? Math.Ceiling(row.Pots * row.Spacing / row.ModuleLength))
        );
        if (pots <= MostPots && modules > MostModules)
        {
            say("rows", Phrase.Of("fault.all-modules", Whole(modules)), Phrase.Of("fault.at-most", MostModules));
        }
        return pots <= MostPots;
    }

    private static void Plantings(Rig rig, Action<string, Phrase, Phrase> say)
    {
        foreach (var (index, row) in rig.Rows.Index())
        {
            var taken = new Dictionary<int, int>();
            foreach (var (entry, planting) in (row.Planting ?? []).Index())
            {
                var path = string.Create(CultureInfo.InvariantCulture, $"rows[{index}].planting[{entry}].pots");
                if (!PotRange.TryParse(planting.Pots, row.Pots, out var named, out var expected))
                {
                    say(path, FaultList.Quote(planting.Pots), expected);
                    continue;
                }
                foreach (var pot in named)
                {
                    if (!taken.TryAdd(pot, entry))
                    {
                        say(
                            path,
                            FaultList.Quote(planting.Pots),
                            Phrase.Of("fault.pot-in-two.expected", pot, taken[pot])
                        );
                        break;
                    }
                }
            }
        }
    }

    private static void Curve(Pump pump, Action<string, Phrase, Phrase> say)
    {
        if (pump.Curve is not null && (pump.ShutOffHead is not null || pump.OpenFlow is not null))
        {
            say("pump.curve", Phrase.Of("fault.curve-and-ends.found"), Phrase.Of("fault.curve-and-ends.expected"));
        }
        else if (pump.ShutOffHead is null != pump.OpenFlow is null)
        {
            var (given, missing) = pump.ShutOffHead is null ? ("openFlow", "shutOffHead") : ("shutOffHead", "openFlow");
            say(
                $"pump.{given}",
                Phrase.Of("fault.curve-one-end.found", given),
                Phrase.Of("fault.curve-one-end.expected", missing)
            );
        }
        if (pump.Model == KeyText.None && (pump.Curve ?? (object?)pump.ShutOffHead ?? pump.OpenFlow) is not null)
        {
            say("pump.model", Phrase.Of("fault.none-and-pump.found"), Phrase.Of("fault.none-and-pump.expected"));
        }
        if (pump.Curve is null)
        {
            return;
        }
        if (pump.Curve.Count < 2)
        {
            say(
                "pump.curve",
                Phrase.Counted("fault.curve-short.found", pump.Curve.Count),
                Phrase.Of("fault.curve-short.expected")
            );
            return;
        }
        if (pump.Curve[0].Flow != 0)
        {
            say("pump.curve[0]", Phrase.Of("fault.curve-first.found"), Phrase.Of("fault.curve-first.expected"));
        }
        for (var i = 1; i < pump.Curve.Count; i++)
        {
            if (pump.Curve[i].Flow <= pump.Curve[i - 1].Flow || pump.Curve[i].Head >= pump.Curve[i - 1].Head)
            {
                var path = string.Create(CultureInfo.InvariantCulture, $"pump.curve[{i}]");
                say(path, Phrase.Of("fault.curve-turns.found"), Phrase.Of("fault.curve-turns.expected"));
            }
        }
    }

    private static void Lengths(Rig rig, PartsCatalogue catalogue, Action<string, Phrase, Phrase> say)
    {
        foreach (var (index, part) in rig.OnHand.Index())
        {
            if (
                part.Length is null
                && (catalogue.Pipes.ContainsKey(part.Part) || catalogue.Tubes.ContainsKey(part.Part))
            )
            {
                var path = string.Create(CultureInfo.InvariantCulture, $"onHand[{index}]");
                say(
                    $"{path}.length",
                    Phrase.Of("fault.nothing"),
                    Phrase.Of("fault.piece-length", FaultList.Quoted(part.Part))
                );
            }
        }
    }

    private static string Whole(double number) => number.ToString("F0", CultureInfo.InvariantCulture);
}
