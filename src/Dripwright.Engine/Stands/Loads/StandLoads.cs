using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Physics;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Stands.Frame;

namespace Dripwright.Engine.Stands.Loads;

/// <summary>One kind of load in a combination.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Weight">[N] Its weight, or its size for a push or pull, before the factor.</param>
/// <param name="Factor">[-] Factor it is counted with.</param>
/// <param name="Source">Whose value it is.</param>
public sealed record LoadShare(string Name, double Weight, double Factor, string Source);

/// <summary>The loads of one combination on a stand.</summary>
/// <remarks>
/// Every pot stands with its weight on the two rails under it, shared by the lever rule. A string's slanting pull acts over
/// the pot's rim; its moment across goes into the same two rails as a couple. Pipes hang on the rail on the drain's side.
/// Method page: docs/methods/stand-loads.md
/// </remarks>
public sealed record StandLoads
{
    private readonly StandFrame _frame;
    private readonly LoadValues _values;
    private readonly StandCase _case;
    private readonly List<NodeLoad> _nodes = [];
    private readonly List<PointLoad> _points = [];
    private readonly List<LineLoad> _lines = [];
    private readonly List<(Vector3 Force, Vector3 At)> _acting = [];
    private double _tubes;
    private double _joints;
    private double _pots;
    private double _wet;
    private double _plants;
    private double _strings;
    private double _pipes;

    private StandLoads(StandFrame frame, StandCase @case, LoadValues values)
    {
        (_frame, _case, _values) = (frame, @case, values);
        AddTubes();
        AddPipes();
        foreach (var pot in frame.Row.Pots)
        {
            AddPot(pot);
        }

        AddPerson();
        Loading = new FrameLoading
        {
            Nodes = _nodes,
            Points = _points,
            Lines = _lines,
        };
        Shares = Listed();
    }

    /// <summary>The combination.</summary>
    public StandCase Case => _case;

    /// <summary>As the frame takes them.</summary>
    public FrameLoading Loading { get; }

    /// <summary>What they are made of.</summary>
    public IReadOnlyList<LoadShare> Shares { get; }

    /// <summary>Every force and where it acts, for tipping.</summary>
    public IReadOnlyList<(Vector3 Force, Vector3 At)> Acting => _acting;

    /// <summary>[N] All weight on the floor.</summary>
    public double Weight => -_acting.Sum(a => Math.Min(a.Force.Z, 0));

    /// <summary>The loads of a combination.</summary>
    /// <param name="frame">The stand.</param>
    /// <param name="case">The combination.</param>
    public static StandLoads Of(StandFrame frame, StandCase @case)
    {
        ArgumentNullException.ThrowIfNull(frame);
        ArgumentNullException.ThrowIfNull(@case);
        return new StandLoads(frame, @case, frame.Options.Loads);
    }

    /// <summary>The rail that the drain hangs on.</summary>
    internal static RailLine DrainRail(StandFrame frame) =>
        frame.Row.Spec.DrainSide switch
        {
            Side.Back => frame.Rails[^1],
            Side.Front => frame.Rails[0],
            _ => frame.Rails[frame.Rails.Count / 2],
        };

    private void AddTubes()
    {
        var perMetre = _frame.Tube.Properties.Area * _frame.Steel.Density * StandardGravity.Value;
        for (var e = 0; e < _frame.Model.Elements.Count; e++)
        {
            var element = _frame.Model.Elements[e];
            var weight = perMetre * _frame.Model.LengthOf(e);
            var force = Leaning(_values.Factors.Dead * perMetre);
            _lines.Add(new LineLoad(e, force));
            Act(_frame.Model.LengthOf(e) * force, Middle(element));
            _tubes += weight;
        }

        foreach (var tube in _frame.Tubes.Where(t => t.Member.Role == MemberRole.Leg))
        {
            // One joint at the top and one foot to every leg, the rest among them.
            var top = _frame.NodeAt(tube.Member.To);
            var force = Leaning(_values.Factors.Dead * _values.JointMass * StandardGravity.Value);
            _nodes.Add(new NodeLoad(top, force));
            Act(force, tube.Member.To);
            _joints += _values.JointMass * StandardGravity.Value;
        }
    }

    private void AddPipes()
    {
        var row = _frame.Row;
        var rail = DrainRail(_frame);
        var water = _case.Pots is not (PotsFull.Light or PotsFull.None);
        var perMetre = row.Feed.Take(1).Append(row.Drain).Sum(run => PipeWeight(run.Pipe, water));
        var length = rail.Right - rail.Left;
        foreach (var e in rail.Tubes.SelectMany(t => t.Elements))
        {
            var force = Leaning(_values.Factors.Wet * perMetre);
            _lines.Add(new LineLoad(e, force));
            Act(_frame.Model.LengthOf(e) * force, Middle(_frame.Model.Elements[e]));
        }

        _pipes = perMetre * length;
    }

    // The drain is taken to be full: a blocked one is.
    private double PipeWeight(PipeSize pipe, bool water) => PipeBeam.Weight(pipe, _values.PipeDensity, water);

    private void AddPot(PotPlace pot)
    {
        if (!Stands(pot))
        {
            return;
        }

        const double G = StandardGravity.Value;
        var type = _frame.Row.Pot;
        var light = _case.Pots == PotsFull.Light;
        var shell = type.Mass * G;
        var filling = WetSubstrate.Mass(type.Volume, light ? _values.Light : _values.Soaked) * G;
        var vines = Math.Max(pot.Plants, 0);
        var plants = light ? 0 : vines * _values.PlantOnStand * G;
        var f = _values.Factors;
        var down = (f.Dead * shell) + (f.Wet * filling) + (f.Plants * plants);
        var weight = Leaning(down);
        var pull = _case.Pull == default ? 0 : vines * _values.StringPull;
        var slant =
            f.Plants
            * pull
            * ((Math.Sin(_values.StringSlant) * _case.Pull) + new Vector3(0, 0, Math.Cos(_values.StringSlant)));
        var arm = type.Height + _values.StringHeight;
        OnRails(pot.Base.X, pot.Base.Y, weight + slant, slant.Y * arm);
        Act(weight, pot.Base);
        if (pull > 0)
        {
            Act(slant, pot.Base with { Z = pot.Base.Z + arm });
        }

        _pots += shell;
        _wet += filling;
        _plants += plants;
        _strings += pull;
    }

    // A force on the two rails beside y by the lever rule, and a moment about x (to the back positive) as a couple on them.
    private void OnRails(double x, double y, Vector3 force, double momentToBack)
    {
        var rails = _frame.Rails;
        if (rails.Count == 1)
        {
            OnRail(rails[0], x, force);
            return;
        }

        var back = 1;
        while (back < rails.Count - 1 && rails[back].Y < y)
        {
            back++;
        }

        var near = rails[back - 1];
        var far = rails[back];
        var gauge = far.Y - near.Y;
        var share = Math.Clamp((y - near.Y) / gauge, 0, 1);
        var couple = new Vector3(0, 0, momentToBack / gauge);
        OnRail(near, x, ((1 - share) * force) + couple);
        OnRail(far, x, (share * force) - couple);
    }

    private void OnRail(RailLine rail, double x, Vector3 force)
    {
        if (force == default)
        {
            return;
        }

        var (element, at) = rail.Place(x, _frame.Model);
        _points.Add(new PointLoad(element, at, force));
    }

    private bool Stands(PotPlace pot)
    {
        var module = (int)Math.Floor((pot.Station / _frame.Row.Spec.ModuleLength) + 1e-9);
        return _case.Pots switch
        {
            PotsFull.Left => 2 * pot.Number <= _frame.Row.Pots.Count,
            PotsFull.Right => 2 * pot.Number > _frame.Row.Pots.Count,
            PotsFull.EverySecondModule => module % 2 == 0,
            PotsFull.FrontLine => !pot.BackLine,
            PotsFull.BackLine => pot.BackLine,
            PotsFull.None => false,
            _ => true,
        };
    }

    private void AddPerson()
    {
        if (_case.Lean == LeanPlace.None)
        {
            return;
        }

        var f = _values.Factors.Person;
        var front = _frame.Rails[0];
        var first = front.Tubes[0].Member;
        if (_case.Lean == LeanPlace.FrontRail)
        {
            var force = new Vector3(0, f * _values.LeanSide, -f * _values.LeanDown);
            var x = (first.From.X + first.To.X) / 2;
            OnRail(front, x, force);
            Act(force, first.From with { X = x });
        }
        else
        {
            var force = new Vector3(f * _values.LeanSide, 0, 0);
            _nodes.Add(new NodeLoad(_frame.NodeAt(first.From), force));
            Act(force, first.From);
        }
    }

    private Vector3 Leaning(double weight) => new Vector3(0, 0, -weight) + (weight * _values.OutOfPlumb * _case.Plumb);

    private void Act(Vector3 force, Vector3 at) => _acting.Add((force, at));

    private Vector3 Middle(FrameElement e)
    {
        var a = _frame.Model.Nodes[e.From].At;
        var b = _frame.Model.Nodes[e.To].At;
        return new Vector3((a.X + b.X) / 2, (a.Y + b.Y) / 2, (a.Z + b.Z) / 2);
    }

    private List<LoadShare> Listed()
    {
        var f = _values.Factors;
        List<LoadShare> shares = [];
        void Add(string name, double weight, double factor, string source)
        {
            if (weight > 0)
            {
                shares.Add(new LoadShare(name, weight, factor, source));
            }
        }

        Add("tubes", _tubes, f.Dead, "section and density of steel");
        Add("printed joints", _joints, f.Dead, "common practice");
        Add("pipes with their water", _pipes, f.Wet, "measures of the catalogue; the drain taken as full");
        Add("empty pots", _pots, f.Dead, "catalogue");
        Add(
            "wet substrate",
            _wet,
            f.Wet,
            _case.Pots == PotsFull.Light
                ? "between dry coir and a drained bag"
                : "upper end of published coir values, rounded up"
        );
        Add(
            "plants and fruit on the stand",
            _plants,
            f.Plants,
            "lower end of 7 to 14 kg for a loaded plant, North Carolina State extension"
        );
        Add("strings", _strings, f.Plants, "common practice");
        if (_case.Lean != LeanPlace.None)
        {
            var rail = _case.Lean == LeanPlace.FrontRail;
            Add("a person leaning, down", rail ? _values.LeanDown : 0, f.Person, "common practice");
            Add("a person leaning, sideways", _values.LeanSide, f.Person, "common practice");
        }

        return shares;
    }
}
