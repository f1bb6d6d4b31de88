using Dripwright.Engine.Findings;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Curing;

/// <summary>A plan whose findings offer only what was seen to cure them.</summary>
/// <remarks>Method page: docs/methods/cures.md</remarks>
public static class ProvenCures
{
    /// <summary>The plan with its findings' cures proven: each, applied, takes its finding away and brings no new stop.</summary>
    /// <remarks>
    /// Stops and mends are looked for; of notes only what their own rule proposes is tried. The same plan and options give the
    /// same answer.
    /// </remarks>
    /// <param name="plan">A plan; with the strength of its stands where that shall be kept as well.</param>
    /// <param name="options">How far is looked; the defaults where null.</param>
    /// <param name="progress">Told before each finding.</param>
    /// <exception cref="OperationCanceledException">The options' stop was asked for.</exception>
    public static Plan Of(Plan plan, CureOptions? options = null, IProgress<PlanProgress>? progress = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        options ??= new CureOptions();
        var search = new CureSearch(new Trials(plan, options.Stop), options);
        List<Finding> proven = [];
        foreach (var (index, finding) in plan.Findings.Index())
        {
            progress?.Report(new PlanProgress(Phrase.Of("progress.cures"), (double)index / plan.Findings.Count));
            proven.Add(finding with { Cures = Of(finding, search) });
        }

        return plan with
        {
            Findings = proven,
        };
    }

    /// <summary>Proven cures of one finding of a plan, the likeliest first: the same as with all the others proven.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="finding">One of its findings.</param>
    /// <param name="options">How far is looked; the defaults where null.</param>
    /// <param name="progress">Told before each trial.</param>
    /// <exception cref="OperationCanceledException">The options' stop was asked for.</exception>
    public static IReadOnlyList<Cure> Of(
        Plan plan,
        Finding finding,
        CureOptions? options = null,
        IProgress<PlanProgress>? progress = null
    )
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(finding);
        options ??= new CureOptions();
        return Of(finding, new CureSearch(new Trials(plan, options.Stop), options, progress));
    }

    private static IReadOnlyList<Cure> Of(Finding finding, CureSearch search) =>
        finding.Level == FindingLevel.Note && finding.Cures.Count == 0 ? [] : search.Of(finding);
}
