namespace Dripwright.Engine.Scenes;

/// <summary>A scene while it is put together.</summary>
internal sealed class SceneDraft
{
    private readonly List<SceneThing> _things = [];
    private readonly List<ScenePiece> _pieces = [];

    /// <summary>Begins a thing; the pieces that follow are its own.</summary>
    public void Begin(SceneThing thing) => _things.Add(thing);

    /// <summary>A round rod. What has no length is left out.</summary>
    public void Rod(SceneMatter matter, Vector3 from, Vector3 to, double radius, double speed = 0)
    {
        if (from.DistanceTo(to) > 1e-6)
        {
            Add(SceneForm.Rod, matter, from, to, SceneWidth.Of(radius), SceneWidth.Of(radius), speed);
        }
    }

    /// <summary>A block whose middle and half sides are given.</summary>
    public void Block(SceneMatter matter, Vector3 middle, double halfX, double halfY, double halfZ)
    {
        var width = new SceneWidth(halfX, halfY);
        var up = halfZ * Vector3.Up;
        Add(SceneForm.Block, matter, middle - up, middle + up, width, width, 0);
    }

    /// <summary>A vessel that stands open, or what fills it.</summary>
    public void Upright(
        SceneForm form,
        SceneMatter matter,
        Vector3 foot,
        double height,
        SceneWidth low,
        SceneWidth high
    ) => Add(form, matter, foot, foot + (height * Vector3.Up), low, high, 0);

    /// <summary>A leaf from its stalk to its tip.</summary>
    public void Leaf(Vector3 stalk, Vector3 tip, double half, double thick) =>
        Add(SceneForm.Ball, SceneMatter.Leaf, stalk, tip, new SceneWidth(half, thick), new SceneWidth(half, thick), 0);

    /// <summary>Closes the scene.</summary>
    public RigScene Close()
    {
        var ends = _pieces
            .SelectMany(piece => new[] { (piece.From, piece.AtFrom), (piece.To, piece.AtTo) })
            .Select(end => (At: end.Item1, Half: Math.Max(end.Item2.X, end.Item2.Y)))
            .ToList();
        return new RigScene(
            _things,
            _pieces,
            new(ends.Min(e => e.At.X - e.Half), ends.Min(e => e.At.Y - e.Half), ends.Min(e => e.At.Z)),
            new(ends.Max(e => e.At.X + e.Half), ends.Max(e => e.At.Y + e.Half), ends.Max(e => e.At.Z))
        );
    }

    private void Add(
        SceneForm form,
        SceneMatter matter,
        Vector3 from,
        Vector3 to,
        SceneWidth atFrom,
        SceneWidth atTo,
        double speed
    ) => _pieces.Add(new(_things.Count - 1, form, matter, from, to, atFrom, atTo) { Speed = speed });
}
