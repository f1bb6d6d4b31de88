using Dripwright.Engine;
using Dripwright.Engine.Curing;
using Dripwright.Language;
using Dripwright.Language.Report;
using Dripwright.Workbench.Editing;
using Dripwright.Workbench.Failing;
using Dripwright.Workbench.Work;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Dripwright.Workbench.Http;

/// <summary>What cures each finding of a rig, what a cure does, and how the whole is made to work.</summary>
internal static class CureAddresses
{
    /// <summary>Which cure.</summary>
    /// <param name="Cure">Its number in the list of cures, such as 2.1.</param>
    internal readonly record struct OneCure([FromQuery(Name = "cure")] string Cure);

    /// <summary>How the whole is made to work.</summary>
    /// <param name="Keep">Fields that stay as they are, beside those usually kept: rows.spacing, pump.model, a section.</param>
    /// <param name="Seconds">Longest search, 1 to 60.</param>
    internal readonly record struct Wanted(
        [FromQuery(Name = "keep")] string[]? Keep,
        [FromQuery(Name = "seconds")] int? Seconds
    );

    /// <summary>What a cure does.</summary>
    /// <param name="Cured">Whether the finding goes.</param>
    /// <param name="Change">What changes and what comes of it.</param>
    /// <param name="Text">The rig file with it, all else as it was.</param>
    internal sealed record TrialAnswer(bool Cured, ToldChange Change, string Text);

    /// <summary>A way to make the whole work.</summary>
    /// <param name="Change">What changes and what comes of it.</param>
    /// <param name="Text">The rig file with it, all else as it was.</param>
    internal sealed record Way(ToldChange Change, string Text);

    /// <summary>How the whole is made to work.</summary>
    /// <param name="Fewest">With the fewest fields changed; null where there is no way.</param>
    /// <param name="Cheapest">At the least cost; null where there is no way.</param>
    /// <param name="Left">Where there is none, what is left of the rig that came nearest.</param>
    /// <param name="Kept">Fields that are kept and that a change for it would have taken.</param>
    /// <param name="Tried">Changes tried.</param>
    /// <param name="Complete">Whether the search ended by itself.</param>
    internal sealed record RepairAnswer(
        Way? Fewest,
        Way? Cheapest,
        IReadOnlyList<ToldFinding> Left,
        IReadOnlyList<string> Kept,
        int Tried,
        bool Complete
    );

    public static void Map(RouteGroupBuilder api)
    {
        var rig = new RigRoutes(api);
        rig.Add(
            "/cures",
            "Cures",
            "Every finding with its proven cures: each, applied, takes the finding away and brings no new stop",
            Cures,
            route => route.Produces<IReadOnlyList<ToldCures>>()
        );
        rig.Add<OneCure>(
            "/cures/try",
            "TryCure",
            "What a cure does, planned anew, and the rig file with it",
            Try,
            route => route.Produces<TrialAnswer>().ProducesProblem(404)
        );
        rig.Add<Wanted>(
            "/make-it-work",
            "MakeItWork",
            "Changes after which the rig has no stop and nothing to mend: with the fewest fields, and at the least cost",
            Repair,
            route => route.Produces<RepairAnswer>()
        );
    }

    private static async Task<IResult> Cures(RigQuestion asked) =>
        Results.Ok(await asked.Of(false, (plan, _) => CureWords.Of(ProvenCures.Of(plan, Options(asked)))));

    private static async Task<IResult> Try(RigQuestion asked, OneCure which) =>
        Results.Ok(
            await asked.Of(
                false,
                (plan, file) =>
                {
                    var (finding, cure) =
                        CureWords.Find(plan, which.Cure, finding => ProvenCures.Of(plan, finding, Options(asked)))
                        ?? throw Refused.NotThere("cure");
                    var trial = CureTrial.Of(plan, finding, cure, new PlanOptions { Draws = 0, Stop = asked.Stop });
                    return new TrialAnswer(
                        trial.Cured,
                        CureWords.Of(plan, trial.After!, cure),
                        CureText.Applied(file.Text, cure)
                    );
                }
            )
        );

    private static CureOptions Options(RigQuestion asked) => new() { Stop = asked.Stop };

    private static async Task<IResult> Repair(RigQuestion asked, Wanted how)
    {
        if (how.Seconds is < 1 or > 60)
        {
            throw new Refused(400, Words.Of("http.seconds"));
        }

        return Results.Ok(
            await asked.Of(
                false,
                (plan, file) =>
                {
                    using var over = CancellationTokenSource.CreateLinkedTokenSource(asked.Stop);
                    over.CancelAfter(TimeSpan.FromSeconds(how.Seconds ?? 20));
                    var repair = MakeItWork.Of(
                        plan,
                        new RepairOptions
                        {
                            Kept = [.. RepairOptions.UsuallyKept, .. how.Keep ?? []],
                            Stop = over.Token,
                        }
                    );
                    return new RepairAnswer(
                        WayOf(plan, file, repair.Fewest),
                        WayOf(plan, file, repair.Cheapest),
                        new PlanWords(plan.Rig.Units).Of(repair.Conflict?.Left ?? []),
                        repair.Conflict?.Kept ?? [],
                        repair.Tried,
                        repair.Complete
                    );
                }
            )
        );
    }

    private static Way? WayOf(Plan plan, RigSource file, RepairedRig? works) =>
        works is null
            ? null
            : new Way(CureWords.Of(plan, works.Plan, works.Cure), CureText.Applied(file.Text, works.Cure));
}
