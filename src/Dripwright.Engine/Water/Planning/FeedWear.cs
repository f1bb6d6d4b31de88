namespace Dripwright.Engine.Water;

/// <summary>What has worn or clogged since the rig was new.</summary>
public enum WearKind
{
    /// <summary>The pump lifts a fifth less.</summary>
    Pump,

    /// <summary>The strainer is clogged by four fifths.</summary>
    Strainer,
}

/// <summary>The feed after a season or two.</summary>
/// <param name="Kind">What has worn.</param>
/// <param name="Pots">[m³/s] What each pot gets then, in the order of the plan's pots.</param>
/// <param name="LowestPressure">[Pa] Lowest gauge pressure at an open emitter.</param>
public sealed record WornFeed(WearKind Kind, IReadOnlyList<double> Pots, double LowestPressure);

/// <summary>Solves the feed again as it will be when pump and strainer are no longer new.</summary>
/// <remarks>Method page: docs/methods/pump.md</remarks>
internal static class FeedWear
{
    /// <summary>[-] Of its lift a worn pump keeps at every flow that its speed then gives. Common practice: count on a fifth less.</summary>
    public const double PumpKeeps = 0.8;

    /// <summary>[-] Of the mesh's area a dirty strainer leaves open. Common practice: clean it at the latest when a fifth is left.</summary>
    public const double StrainerLeaves = 0.2;

    /// <summary>Both cases, those that the rig can have.</summary>
    /// <param name="model">The feed as a network.</param>
    /// <param name="solver">Its solver, at the present solution; left with the present laws.</param>
    /// <param name="now">The pots of the present solution.</param>
    /// <param name="strainer">[-] Loss of the clean strainer; 0 where there is none.</param>
    public static IEnumerable<WornFeed> Of(
        FeedModel model,
        NetworkSolver solver,
        IReadOnlyList<PotFlow> now,
        double strainer
    )
    {
        if (model.Curve is { } curve && model.PumpSetting is { } setting)
        {
            // As if it ran slower: head falls with the square of speed.
            var worn = new PumpLaw(curve.AtSpeed(Math.Sqrt(PumpKeeps)), setting);
            solver.SetLaw(model.Source, worn);
            if (solver.TrySolve())
            {
                yield return Read(WearKind.Pump, model, solver, now);
            }

            solver.SetLaw(model.Source, model.SourceLaw);
        }

        if (strainer > 0)
        {
            // Speed in what is left of the mesh grows as its area shrinks, and the loss with its square.
            var more = strainer * ((1 / (StrainerLeaves * StrainerLeaves)) - 1);
            var dirty = model.First with { LossCoefficient = model.First.LossCoefficient + more };
            solver.SetLaw(model.FirstLink, new PipeLaw(dirty, model.Network.KinematicViscosity));
            if (solver.TrySolve())
            {
                yield return Read(WearKind.Strainer, model, solver, now);
            }

            solver.SetLaw(model.FirstLink, new PipeLaw(model.First, model.Network.KinematicViscosity));
        }
    }

    private static WornFeed Read(WearKind kind, FeedModel model, NetworkSolver solver, IReadOnlyList<PotFlow> now)
    {
        Dictionary<(int, int), double> flows = [];
        var lowest = double.PositiveInfinity;
        for (var i = 0; i < model.Emitters.Count; i++)
        {
            var emitter = model.Emitters[i];
            var pot = (emitter.Row.Number, emitter.Place.Pot);
            flows[pot] = flows.GetValueOrDefault(pot) + solver.EmitterFlows[i];
            if (emitter.Place.Open > 0)
            {
                lowest = Math.Min(lowest, Math.Max(0, solver.EmitterHeads[i]) * model.SpecificWeight);
            }
        }

        return new WornFeed(
            kind,
            [.. now.Select(p => flows.GetValueOrDefault((p.Row, p.Pot)))],
            double.IsFinite(lowest) ? lowest : 0
        );
    }
}
