namespace Dripwright.Engine.Scenes;

/// <summary>Puts a scene together in the order in which a rig is built.</summary>
internal sealed class SceneBuilder(Plan plan)
{
    private readonly SceneDraft _draft = new();

    public RigScene Build()
    {
        new StandPieces(plan, _draft).Add();
        new PotPieces(plan, _draft).Add();
        var runs = new RunPieces(plan, _draft);
        runs.AddDrains();
        new ReservoirPieces(plan, _draft).Add();
        runs.AddFeeds();
        new EmitterPieces(plan, _draft).Add();
        new WirePieces(plan, _draft).Add();
        new PlantPieces(plan, _draft).Add();
        return _draft.Close();
    }
}
