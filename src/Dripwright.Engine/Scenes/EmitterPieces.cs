using Dripwright.Engine.Layout;

namespace Dripwright.Engine.Scenes;

/// <summary>Emitters: a small tube from the line to over its pot.</summary>
internal sealed class EmitterPieces(Plan plan, SceneDraft draft)
{
    /// <summary>[m] Half the outside of a small tube: 1/4-in tubing.</summary>
    private const double Tube = 0.0032;

    /// <summary>[m] Half the body of an emitter.</summary>
    private const double Body = 0.008;

    /// <summary>Beyond so many none has a body: a large rig is looked at from afar.</summary>
    private const int Many = 240;

    private readonly bool _isMany = plan.Layout.Rows.Sum(row => row.Emitters.Count) > Many;

    public void Add()
    {
        var flows = plan.Feed.Emitters.ToDictionary(e => (e.Row, e.Pot, e.Index), e => e.Flow);
        foreach (var row in plan.Layout.Rows)
        {
            foreach (var emitter in row.Emitters)
            {
                var pot = row.Pots[emitter.Pot - 1];
                draft.Begin(
                    new(
                        SceneNames.Numbered("emitter", SceneNames.OfPot("of", row.Number, emitter.Pot), emitter.Index),
                        SceneKind.Emitter,
                        SceneStage.Feed,
                        "",
                        row.Number,
                        emitter.Pot
                    )
                    {
                        Flow = flows.TryGetValue((row.Number, emitter.Pot, emitter.Index), out var flow) ? flow : null,
                    }
                );
                One(row, pot, emitter);
            }
        }
    }

    private void One(RowLayout row, PotPlace pot, EmitterPlace emitter)
    {
        var run = row.Feed[emitter.Leg];
        var hole = run.At(Math.Clamp(emitter.Station, run.Start, run.End));
        var outlet = new Vector3(
            Within(hole.X, pot.Base.X, row.Pot.Length),
            Within(hole.Y, pot.Base.Y, row.Pot.Width),
            emitter.Outlet
        );
        draft.Rod(SceneMatter.Feed, hole, outlet, Tube);
        if (!_isMany)
        {
            draft.Rod(SceneMatter.Pump, outlet, outlet - (2 * Body * Vector3.Up), Body);
        }
    }

    // Its water falls a quarter inside the pot at least.
    private static double Within(double value, double middle, double width) =>
        Math.Clamp(value, middle - (width / 4), middle + (width / 4));
}
