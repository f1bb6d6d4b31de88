using System.Globalization;
using Dripwright.Engine;
using Dripwright.Engine.Curing;
using Dripwright.Language;
using Dripwright.Language.Report;
using Spectre.Console;

namespace Dripwright.Screen;

/// <summary>Cures and what they do, on a screen or in a text file.</summary>
internal static class CuresView
{
    /// <summary>Every finding with its cures.</summary>
    public static void Draw(IAnsiConsole console, IReadOnlyList<ToldCures> all)
    {
        if (all.Count == 0)
        {
            Line(console, Words.Of("findings.none"));
        }

        foreach (var one in all)
        {
            var level = Words.Of($"level.{one.Finding.Level.ToString().ToLowerInvariant()}");
            Line(console, $"{Number(one.Number)}. {level}: {one.Finding.Place}: {one.Finding.What}");
            foreach (var cure in one.Cures)
            {
                Line(console, $"   {cure.Number}  {string.Join("; ", cure.Changes.Concat(cure.Steps))}");
            }

            if (one.Cures.Count == 0)
            {
                Line(console, "   " + Words.Of("cures.look", one.Finding.Remedy));
            }
        }
    }

    /// <summary>What a change does.</summary>
    public static void Draw(IAnsiConsole console, ToldChange change)
    {
        foreach (var line in change.Changes.Concat(change.Steps))
        {
            Line(console, line);
        }

        foreach (var figure in change.Figures)
        {
            Line(console, $"  {figure.Name}: {figure.Before} → {figure.After}");
        }

        Line(
            console,
            "  " + Words.Of("cures.cost", Money(change.CostBefore), Money(change.CostAfter), change.Currency)
        );
        Line(console, "  " + Words.Of("cures.items", change.BuyBefore, change.BuyAfter));
        foreach (var finding in change.Gone)
        {
            Line(console, "  " + Words.Of("cures.gone", finding.Place, finding.What));
        }

        foreach (var finding in change.New)
        {
            Line(console, "  " + Words.Of("cures.new", finding.Place, finding.What));
        }
    }

    /// <summary>How a rig is made to work.</summary>
    public static void Draw(IAnsiConsole console, Plan plan, Repair repair)
    {
        if (repair.Conflict is { } conflict)
        {
            Line(console, Words.Of(repair.Complete ? "repair.none" : "repair.none.bounds", repair.Tried));
            var words = new PlanWords(plan.Rig.Units);
            foreach (var finding in words.Of(conflict.Left))
            {
                Line(console, $"  {finding.Place}: {finding.What} → {finding.Remedy}");
            }

            if (conflict.Kept.Count > 0)
            {
                Line(console, Words.Of("repair.kept", string.Join(", ", conflict.Kept)));
            }
        }

        if (repair.Fewest is not { } fewest)
        {
            return;
        }

        if (fewest.Cure.Changes.Count == 0)
        {
            Line(console, Words.Of("repair.well"));
            return;
        }

        Line(console, Words.Of("repair.fewest"));
        Draw(console, CureWords.Of(plan, fewest.Plan, fewest.Cure));
        Line(console, "");
        if (repair.Cheapest == fewest)
        {
            Line(console, Words.Of("repair.cheapest.same"));
        }
        else
        {
            Line(console, Words.Of("repair.cheapest"));
            Draw(console, CureWords.Of(plan, repair.Cheapest!.Plan, repair.Cheapest.Cure));
        }
    }

    private static string Money(decimal sum) => sum.ToString("0.00", CultureInfo.InvariantCulture);

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static void Line(IAnsiConsole console, string text) => console.Write(new Text(Plain.Line(text) + "\n"));
}
