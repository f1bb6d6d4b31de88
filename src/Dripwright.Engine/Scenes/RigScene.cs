namespace Dripwright.Engine.Scenes;

/// <summary>What is built one after the other, and can be cut away to see what lies behind.</summary>
public enum SceneStage
{
    /// <summary>Tubes, joints, feet, what holds the drain.</summary>
    Stand,

    /// <summary>Pots with their medium.</summary>
    Pots,

    /// <summary>Row drains, their elbows, returns and collector.</summary>
    Drain,

    /// <summary>Reservoir, its water, pump.</summary>
    Reservoir,

    /// <summary>Header, feed lines, emitters, bypass.</summary>
    Feed,

    /// <summary>The crop wire on its supports.</summary>
    Wire,

    /// <summary>Plants and their strings.</summary>
    Plants,
}

/// <summary>What a thing of the scene is.</summary>
public enum SceneKind
{
    /// <summary>A tube of the stand.</summary>
    Tube,

    /// <summary>A joint, foot, clip, clamp or hanger of the stand.</summary>
    Joint,

    /// <summary>A pot with its medium and the elbow at its drain hole.</summary>
    Pot,

    /// <summary>A run of pipe or hose with its fittings.</summary>
    Run,

    /// <summary>An emitter with its small tube.</summary>
    Emitter,

    /// <summary>The reservoir with its water.</summary>
    Reservoir,

    /// <summary>The pump, or the outlet of a reservoir that stands high.</summary>
    Pump,

    /// <summary>A crop wire.</summary>
    Wire,

    /// <summary>The plants of a pot with their strings.</summary>
    Plants,
}

/// <summary>The simple form that stands for a piece. All run from one end of an axis to the other.</summary>
public enum SceneForm
{
    /// <summary>Round and closed: tube, pipe, medium.</summary>
    Rod,

    /// <summary>Round and open at its end: a bucket.</summary>
    Tub,

    /// <summary>Square and closed: a joint.</summary>
    Block,

    /// <summary>Square and open at its end: a trough, a box.</summary>
    Crate,

    /// <summary>An ellipsoid: leaves.</summary>
    Ball,
}

/// <summary>What a piece is of; a page or file gives each its colour.</summary>
public enum SceneMatter
{
    /// <summary>Tube of the stand.</summary>
    Steel,

    /// <summary>Printed, or bought to hold something.</summary>
    Print,

    /// <summary>A pot's wall.</summary>
    Pot,

    /// <summary>What the roots stand in.</summary>
    Medium,

    /// <summary>Pipe with water under pressure.</summary>
    Feed,

    /// <summary>Pipe with water running back.</summary>
    Return,

    /// <summary>The water's surface in the reservoir.</summary>
    Solution,

    /// <summary>The reservoir's wall.</summary>
    Reservoir,

    /// <summary>The pump.</summary>
    Pump,

    /// <summary>The crop wire.</summary>
    Wire,

    /// <summary>Strings and stems.</summary>
    Stem,

    /// <summary>Leaves.</summary>
    Leaf,
}

/// <summary>A thing that has a name, with what was computed of it. It has one piece or many.</summary>
/// <param name="Name">Its name, the same as in the drawings of the screen: "pot-1-3", "run-D1", "pump", "tube-S1-leg-4".</param>
/// <param name="Kind">What it is.</param>
/// <param name="Stage">When it is built.</param>
/// <param name="Code">Its label in drawings and lists, such as <c>D1</c> or <c>S1-rail</c>; empty for a pot.</param>
/// <param name="Row">Row, from 1; 0 where it serves all.</param>
/// <param name="Pot">Pot of the row, from 1; 0 for anything else.</param>
public sealed record SceneThing(string Name, SceneKind Kind, SceneStage Stage, string Code, int Row, int Pot)
{
    /// <summary>[m³/s] What a pot gets, an emitter gives, a run or the pump carries; null where it was not computed.</summary>
    public double? Flow { get; init; }

    /// <summary>[Pa] Gauge pressure at a pot's emitters; null for anything else.</summary>
    public double? Pressure { get; init; }

    /// <summary>[-] How far a tube of the stand or a wire is used up, 1 being the limit; null where it was not computed.</summary>
    public double? Utilisation { get; init; }

    /// <summary>[-] Greatest depth of water in a drain over its bore; null for anything else.</summary>
    public double? Depth { get; init; }

    /// <summary>True for the pot that gets least water.</summary>
    public bool IsWeakest { get; init; }
}

/// <summary>Half widths of a piece at one end.</summary>
/// <param name="X">[m] Along the row where the piece stands upright; else level, across its axis.</param>
/// <param name="Y">[m] Across the row where it stands upright; else square to both.</param>
public readonly record struct SceneWidth(double X, double Y)
{
    /// <summary>The same both ways.</summary>
    /// <param name="half">[m] Radius, or half a side.</param>
    public static SceneWidth Of(double half) => new(half, half);
}

/// <summary>One simple form in its place.</summary>
/// <param name="Thing">Index of the thing it belongs to.</param>
/// <param name="Form">Its form.</param>
/// <param name="Matter">What it is of.</param>
/// <param name="From">One end of its axis.</param>
/// <param name="To">Other end of its axis.</param>
/// <param name="AtFrom">Half widths at the one end.</param>
/// <param name="AtTo">Half widths at the other end.</param>
public sealed record ScenePiece(
    int Thing,
    SceneForm Form,
    SceneMatter Matter,
    Vector3 From,
    Vector3 To,
    SceneWidth AtFrom,
    SceneWidth AtTo
)
{
    /// <summary>[m/s] Speed of the water in it, positive from <see cref="From"/> to <see cref="To"/>; 0 where none runs.</summary>
    public double Speed { get; init; }

    /// <summary>[-] The two ways across its axis: of what stands upright along x and y of the room, else the first of them level.</summary>
    public (Vector3 First, Vector3 Second) Across()
    {
        var along = (To - From).Unit();
        var first = Math.Abs(along.Z) > 0.999 ? new Vector3(1, 0, 0) : along.Cross(Vector3.Up).Unit();
        return (first, along.Cross(first));
    }
}

/// <summary>A rig in the round: every thing that can be seen, as simple forms in their places, with what was computed of it.</summary>
/// <remarks>
/// The one source of the turning picture on a page and of the file for other programs. Drawn from the layout: nothing of it is
/// placed a second time. Leaves stand for a plant and are no forecast of it.
/// Method page: docs/methods/scene.md
/// </remarks>
/// <param name="Things">Every thing, in the order of building.</param>
/// <param name="Pieces">Their forms.</param>
/// <param name="Least">The least corner of all pieces.</param>
/// <param name="Most">The greatest corner of all pieces.</param>
public sealed record RigScene(
    IReadOnlyList<SceneThing> Things,
    IReadOnlyList<ScenePiece> Pieces,
    Vector3 Least,
    Vector3 Most
)
{
    /// <summary>The scene of a plan.</summary>
    /// <param name="plan">The plan. Loads of tubes are there where its strength was asked for.</param>
    public static RigScene Of(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return new SceneBuilder(plan).Build();
    }
}
