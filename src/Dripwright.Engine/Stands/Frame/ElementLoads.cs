namespace Dripwright.Engine.Stands.Frame;

/// <summary>A loading sorted by element, with the end actions that would hold all nodes still.</summary>
internal sealed class ElementLoads
{
    private readonly FrameModel _model;
    private readonly ElementMatrix[] _elements;
    private readonly double[] _rows;

    public ElementLoads(FrameModel model, ElementMatrix[] elements, FrameLoading loading)
    {
        (_model, _elements) = (model, elements);
        Points = new List<PointLoad>?[elements.Length];
        PerMetre = new Vector3[elements.Length];
        Held = new double[elements.Length][];
        OnNodes = new Vector3[model.Nodes.Count];
        MomentsOnNodes = new Vector3[model.Nodes.Count];
        foreach (var load in loading.Nodes)
        {
            Check(load.Node, model.Nodes.Count);
            Check(load.Force);
            Check(load.Moment);
            OnNodes[load.Node] += load.Force;
            MomentsOnNodes[load.Node] += load.Moment;
            Size += load.Force.Length + load.Moment.Length;
        }

        foreach (var load in loading.Points)
        {
            Check(load.Element, elements.Length);
            Check(load.Force);
            var element = elements[load.Element];
            Guard.Between(load.At, 0, element.Length * (1 + 1e-12));
            (Points[load.Element] ??= []).Add(load);
            element.AddHeldPoint(Held[load.Element] ??= new double[12], load.Force, load.At);
            Size += load.Force.Length;
        }

        foreach (var load in loading.Lines)
        {
            Check(load.Element, elements.Length);
            Check(load.PerMetre);
            PerMetre[load.Element] += load.PerMetre;
            elements[load.Element].AddHeldLine(Held[load.Element] ??= new double[12], load.PerMetre);
            Size += load.PerMetre.Length * elements[load.Element].Length;
        }

        foreach (var list in Points)
        {
            list?.Sort((a, b) => a.At.CompareTo(b.At));
        }

        _rows = new double[6 * model.Nodes.Count];
        for (var node = 0; node < model.Nodes.Count; node++)
        {
            Put(6 * node, OnNodes[node], MomentsOnNodes[node]);
        }

        for (var e = 0; e < elements.Length; e++)
        {
            if (Held[e] is { } q)
            {
                var m = elements[e];
                Put(6 * model.Elements[e].From, -m.ToRoom(q[0], q[1], q[2]), -m.ToRoom(q[3], q[4], q[5]));
                Put(6 * model.Elements[e].To, -m.ToRoom(q[6], q[7], q[8]), -m.ToRoom(q[9], q[10], q[11]));
            }
        }
    }

    /// <summary>Point loads of each element by place; null where it has none.</summary>
    public List<PointLoad>?[] Points { get; }

    /// <summary>[N/m] Even load of each element.</summary>
    public Vector3[] PerMetre { get; }

    /// <summary>End actions that hold the nodes still, local axes; null where an element bears no load of its own.</summary>
    public double[]?[] Held { get; }

    public Vector3[] OnNodes { get; }

    public Vector3[] MomentsOnNodes { get; }

    /// <summary>Sum of the sizes of all loads, to measure smallness by.</summary>
    public double Size { get; }

    /// <summary>The loads on all rows, held ones too.</summary>
    public double[] OnRows => _rows;

    /// <summary>The right-hand side, zero in held rows.</summary>
    public double[] Rows(bool[] held)
    {
        var rows = (double[])_rows.Clone();
        for (var i = 0; i < rows.Length; i++)
        {
            if (held[i])
            {
                rows[i] = 0;
            }
        }

        return rows;
    }

    private void Put(int row, Vector3 force, Vector3 moment)
    {
        _rows[row] += force.X;
        _rows[row + 1] += force.Y;
        _rows[row + 2] += force.Z;
        _rows[row + 3] += moment.X;
        _rows[row + 4] += moment.Y;
        _rows[row + 5] += moment.Z;
    }

    private static void Check(int index, int count)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(index);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(index, count);
    }

    private static void Check(Vector3 v)
    {
        Guard.Finite(v.X);
        Guard.Finite(v.Y);
        Guard.Finite(v.Z);
    }
}
