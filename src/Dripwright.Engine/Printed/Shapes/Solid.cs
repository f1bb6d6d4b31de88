namespace Dripwright.Engine.Printed.Shapes;

/// <summary>A solid described by how it is put together; evaluated to a mesh elsewhere.</summary>
public abstract record Solid
{
    /// <summary>[m³] Volume by formula; null where parts overlap in a way that no formula covers.</summary>
    public abstract double? Volume { get; }

    /// <summary>[m³] What its volume cannot be more than.</summary>
    /// <exception cref="NotSupportedException">It has no formula and nothing is known of its size.</exception>
    public virtual double MostVolume => Volume ?? throw new NotSupportedException($"A {GetType().Name} has no bound.");

    /// <summary>Points whose box is the solid's box; a cut is not counted, as ours never take a whole end away.</summary>
    public abstract IEnumerable<Vector3> Outermost { get; }

    /// <summary>The same solid elsewhere.</summary>
    /// <param name="placement">Turn and shift.</param>
    public Solid Placed(Placement placement) => new Moved(this, placement);

    /// <summary>The same solid shifted.</summary>
    /// <param name="x">[m] To the right.</param>
    /// <param name="y">[m] To the back.</param>
    /// <param name="z">[m] Up.</param>
    public Solid Shifted(double x, double y, double z) => Placed(Placement.Shifted(new(x, y, z)));
}
