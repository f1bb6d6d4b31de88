using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Physics;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Water;

/// <summary>One emitter as the network knows it.</summary>
internal readonly record struct ModelEmitter(RowLayout Row, EmitterPlace Place, bool Planted);

/// <summary>A leg of a row's line: its nodes from left to right and the pipes between them.</summary>
/// <param name="Row">The row.</param>
/// <param name="Run">The leg's run.</param>
/// <param name="Stations">[m] Stations of the nodes.</param>
/// <param name="Nodes">Their numbers in the network.</param>
/// <param name="Links">Numbers of the pipes between them.</param>
/// <param name="FlushCap">The emitter entry that stands for an opened flush cap; -1 where the leg has no dead end.</param>
/// <param name="DeadEndLink">The pipe before the dead end; -1 where there is none.</param>
internal sealed record ModelLeg(
    RowLayout Row,
    PipeRun Run,
    double[] Stations,
    int[] Nodes,
    int[] Links,
    int FlushCap,
    int DeadEndLink
);

/// <summary>A rig's feed as a network of pipes: what the layout placed, link for link.</summary>
/// <remarks>
/// Nodes stand at every hole and every entry. An emitter's microtube and inline valve are solved with the emitter. Each
/// punched barb takes a little head of the line. Method page: docs/methods/feed-network.md
/// </remarks>
internal sealed class FeedModel
{
    // Area that the barb of a punched emitter covers in the bore: 4 mm wide, 5 mm into the line. The smallest barb of the
    // measurements behind LocalLoss.EmitterBarb covers 19.7 mm².
    private const double BarbArea = 20e-6;

    // Bore of a transfer barb over that of its tube: common practice, from memory; measure yours.
    private const double BarbBore = 0.7;

    // Inlet and outlet of a microtube: sharp entrance into the barb, the step from the barb to the tube, and the exit.
    private static readonly double s_tubeEnds =
        LocalLoss.OnOtherBore(LocalLoss.SharpEntrance + LocalLoss.SuddenEnlargement(BarbBore, 1), BarbBore, 1)
        + LocalLoss.Exit;

    // Loss of a small pump standing still, on the header's bore: it is a choke, not a valve. Assumed.
    internal const double StoppedPumpLoss = 10;

    private readonly Rig _rig;
    private readonly RigLayout _layout;
    private readonly RigParts _parts;
    private readonly double _barb;
    private readonly Dictionary<(double Open, double Tube), Pipe?> _branches = [];
    private readonly Dictionary<string, int> _points = [];
    private readonly List<ModelEmitter> _emitters = [];
    private readonly List<ModelLeg> _legs = [];
    private readonly List<(FeedLink Link, int Index)> _supply = [];

    public FeedModel(Rig rig, RigLayout layout)
    {
        _rig = rig;
        _layout = layout;
        _parts = layout.Parts;
        var celsius = rig.Reservoir.WaterTemperature - 273.15;
        SpecificWeight = WaterProperties.SpecificWeight(celsius);
        Law = LawOf(_parts.Emitter, celsius);
        _barb = LocalLoss.EmitterBarb(Math.Min(BarbArea, 0.3 * Area(_parts.Line)), _parts.Line.InsideDiameter);
        Network = new Network(WaterProperties.KinematicViscosity(celsius));
        Surface = Network.AddFixedHead(layout.Tank.Full);
        AddSource();
        AddSupply();
        foreach (var row in layout.Rows)
        {
            AddRow(row);
        }

        AddBreakHole();
        AddFlushCaps();
    }

    public Network Network { get; }

    public double SpecificWeight { get; }

    public EmitterLaw Law { get; }

    public int Surface { get; }

    /// <summary>The link from the reservoir into the header: the pump, or the outlet of a raised reservoir.</summary>
    public int Source { get; private set; }

    public ILinkLaw SourceLaw { get; private set; } = null!;

    /// <summary>The pump's curve; null for gravity feed.</summary>
    public PumpCurve? Curve { get; private set; }

    /// <summary>How the pump stands in the line; null for gravity feed.</summary>
    public PumpSetting? PumpSetting { get; private set; }

    /// <summary>The first stretch of header, with the strainer in it.</summary>
    public Pipe First { get; private set; }

    /// <summary>Number of that stretch.</summary>
    public int FirstLink { get; private set; }

    public int Bypass { get; private set; } = -1;

    /// <summary>The emitter entry that stands for the siphon-breaking hole; -1 where there is none.</summary>
    public int BreakHole { get; private set; } = -1;

    public IReadOnlyList<ModelEmitter> Emitters => _emitters;

    public IReadOnlyList<ModelLeg> Legs => _legs;

    public IReadOnlyList<(FeedLink Link, int Index)> Supply => _supply;

    public int Point(string name) => _points[name];

    public static double Area(PipeSize pipe) => Math.PI / 4 * pipe.InsideDiameter * pipe.InsideDiameter;

    /// <summary>[°C] Water in which emitters are rated.</summary>
    private const double RatedCelsius = 20;

    /// <summary>[-] Flow of an emitter in water of a temperature over that in which it is rated.</summary>
    /// <remarks>
    /// Friction h ∝ νᵇ q²⁻ᵇ gives x = 1/(2 - b), so at one head q ∝ ν^(1 - 2x): a turbulent path (x 0.5) does not feel the
    /// viscosity, a laminar one (x 1) gives in proportion to 1/ν. A compensating one holds its flow. Method page: docs/methods/emitters.md
    /// </remarks>
    /// <param name="emitter">The emitter.</param>
    /// <param name="celsius">[°C] The water's temperature.</param>
    public static double Thinness(EmitterType emitter, double celsius) =>
        emitter.Kind == EmitterKind.PressureCompensating
            ? 1
            : Math.Pow(
                WaterProperties.KinematicViscosity(RatedCelsius) / WaterProperties.KinematicViscosity(celsius),
                Math.Max(0, (2 * emitter.Exponent) - 1)
            );

    /// <summary>The catalogue's emitter as a law of head.</summary>
    public static EmitterLaw LawOf(EmitterType emitter, double celsius)
    {
        var specificWeight = WaterProperties.SpecificWeight(celsius);
        var rated = emitter.RatedPressure / specificWeight;
        return emitter.Kind == EmitterKind.PressureCompensating
            ? EmitterLaw.PressureCompensating(
                emitter.RatedFlow,
                rated,
                emitter.Exponent,
                emitter.MinPressure / specificWeight,
                emitter.MaxPressure / specificWeight
            )
            : EmitterLaw.FromRating(emitter.RatedFlow * Thinness(emitter, celsius), rated, emitter.Exponent);
    }

    private static Pipe PipeOf(PipeSize size, double length, double loss) =>
        new(length, size.InsideDiameter, size.Roughness, loss);

    private void AddSource()
    {
        var pump = Network.AddJunction(_layout.Tank.PumpOutlet.Z);
        _points["pump"] = pump;
        var bore = _parts.Header.InsideDiameter;
        if (_parts.Pump is { } pumping)
        {
            Curve = CurveOf(pumping);
            var setting = new PumpSetting(true, _rig.Feed.CheckValve, bore, StoppedPumpLoss);
            PumpSetting = setting;
            SourceLaw = new PumpLaw(Curve, setting);
            Source = Network.AddPump(Surface, pump, Curve, setting);
        }
        else
        {
            var outlet = new Pipe(0, bore, 0, LocalLoss.SharpEntrance);
            SourceLaw = new PipeLaw(outlet, Network.KinematicViscosity);
            Source = Network.AddLink(Surface, pump, SourceLaw, hasCheckValve: _rig.Feed.CheckValve);
        }
    }

    /// <summary>The pump's curve as the solver wants it.</summary>
    /// <exception cref="InvalidOperationException">The points are no curve; the reader should have said so.</exception>
    private static PumpCurve CurveOf(ResolvedPump pump)
    {
        if (pump.FromEnds)
        {
            return PumpCurve.FromShutOffAndOpenFlow(pump.Curve[0].Head, pump.Curve[^1].Flow, pump.Power);
        }

        var reading = PumpCurve.Read(pump.Curve.Select(p => new PumpPoint(p.Flow, p.Head)), ratedPower: pump.Power);
        return reading.Curve ?? throw new InvalidOperationException(string.Join(" ", reading.Faults));
    }

    private void AddSupply()
    {
        var strainer = _parts.Strainer?.Loss ?? 0;
        var throttle = _rig.Feed.Throttle is not null;
        foreach (var link in _layout.Supply)
        {
            if (link.To == "tank")
            {
                AddBypass(link);
                continue;
            }

            var from = _points[link.From];
            var first = link.From == "pump";
            if (throttle && (link.To is not ("bypass" or FeedLink.BreakHole) || HasValve(link)))
            {
                // The throttling valve sits after the bypass tee, in the first stretch towards the rows.
                from = AddThrottle(from, link.Height);
                throttle = false;
            }

            var to = Network.AddJunction(link.Height);
            _points[link.To] = to;
            var pipe = PipeOf(link.Run.Pipe, link.Length, link.Loss + (first ? strainer : 0));
            var index = Network.AddPipe(from, to, pipe);
            if (first)
            {
                (First, FirstLink) = (pipe, index);
            }

            _supply.Add((link, index));
        }
    }

    // The hole may lie before the valve or after it.
    private bool HasValve(FeedLink link)
    {
        var end = _layout
            .Supply.TakeWhile(l => !ReferenceEquals(l, link))
            .Append(link)
            .Where(l => ReferenceEquals(l.Run, link.Run))
            .Sum(l => l.Length);
        return link.Run.Fittings.Any(f =>
            f.Type.Kind == FittingKind.Valve && f.Station > end - link.Length && f.Station <= end
        );
    }

    /// <summary>The siphon-breaking hole spouts as long as the pump runs: q = Cd A √(2 g h).</summary>
    private void AddBreakHole()
    {
        if (_layout.BreakHole is { } hole)
        {
            var law = EmitterLaw.Plain(PowerOff.BreakHoleFlow(hole.Diameter, 1), 0.5);
            BreakHole = Network.AddEmitter(_points[FeedLink.BreakHole], new Emitter(law, hole.Height, -1));
        }
    }

    private int AddThrottle(int from, double height)
    {
        var open = ValveOpening.Effective(_rig.Feed.Throttle!.Value);
        var valve = _parts.Fitting(_parts.Header, FittingKind.Valve);
        var after = Network.AddJunction(height);
        var loss = open > 0 ? ValveOpening.LossCoefficient(valve.LossThrough, open) : 0;
        Network.AddValve(from, after, _parts.Header.InsideDiameter, loss, open > 0);
        return after;
    }

    private void AddBypass(FeedLink link)
    {
        var open = ValveOpening.Effective(_rig.Feed.Bypass!.Value);
        var valve = _parts.Fitting(_parts.Header, FittingKind.Valve);
        var loss = open > 0 ? ValveOpening.LossCoefficient(valve.LossThrough, open) : 0;
        // It pours out over the water: the head at its end is its own height, and the jet's velocity is lost.
        var mouth = Network.AddFixedHead(link.Height);
        var pipe = PipeOf(link.Run.Pipe, link.Length, link.Loss + loss + LocalLoss.Exit);
        Bypass = Network.AddLink(
            _points["bypass"],
            mouth,
            new PipeLaw(pipe, Network.KinematicViscosity),
            LinkKind.Valve,
            open > 0,
            hasCheckValve: true
        );
        _supply.Add((link, Bypass));
    }

    private void AddRow(RowLayout row)
    {
        var number = row.Number.ToString(System.Globalization.CultureInfo.InvariantCulture);
        var last = row.Number == _layout.Rows.Count;
        // A tee's branch feeds the row, except at the header's end, whose adapter is counted in the header.
        var tap = last ? 0 : _parts.Fitting(_parts.Header, FittingKind.Tee).LossBranch;
        var near = _points[$"near-{number}"];
        if (_rig.Feed.Entry == FeedEntry.Loop)
        {
            AddLoop(row, near, tap);
            return;
        }

        var leg = AddLeg(row, row.Feed[0], 0);
        Enter(near, leg, row.FeedEntries[0], tap);
        if (row.FeedEntries.Count > 1)
        {
            Enter(_points[$"far-{number}"], leg, row.FeedEntries[1], tap);
        }
    }

    private void AddLoop(RowLayout row, int near, double tap)
    {
        var front = AddLeg(row, row.Feed[0], 0);
        var back = AddLeg(row, row.Feed[1], 1);
        var left = row.FeedEntries[0] < row.Length / 2;
        var half = row.Feed[2].Length / 2;
        var elbow = _parts.Fitting(_parts.Line, FittingKind.Elbow90).LossThrough;
        var tee = _parts.Fitting(_parts.Line, FittingKind.Tee).LossBranch;
        foreach (var leg in (ModelLeg[])[front, back])
        {
            var node = left ? leg.Nodes[0] : leg.Nodes[^1];
            Network.AddPipe(near, node, PipeOf(_parts.Line, half, elbow + tee + tap));
        }

        Network.AddPipe(
            left ? front.Nodes[^1] : front.Nodes[0],
            left ? back.Nodes[^1] : back.Nodes[0],
            PipeOf(_parts.Line, 2 * half, 2 * elbow)
        );
    }

    private void Enter(int point, ModelLeg leg, double station, double tap)
    {
        var at = Array.BinarySearch(leg.Stations, station);
        var turn = _rig.Feed.Entry == FeedEntry.Middle ? _parts.Fitting(_parts.Line, FittingKind.Tee).LossBranch : 0;
        // The tap itself is short; its length is a hand's breadth of header.
        Network.AddPipe(point, leg.Nodes[at], PipeOf(_parts.Header, 0.05, tap + turn));
    }

    private ModelLeg AddLeg(RowLayout row, PipeRun run, int number)
    {
        var height = run.Path[0].Z;
        List<EmitterPlace> places = [.. row.Emitters.Where(e => e.Leg == number).OrderBy(e => e.Station)];
        double[] stations =
        [
            .. places
                .Select(p => p.Station)
                .Concat(row.FeedEntries.Count > 0 && _rig.Feed.Entry != FeedEntry.Loop ? row.FeedEntries : [])
                .Append(run.Start)
                .Append(run.End)
                .Order()
                .Distinct(),
        ];
        var nodes = new int[stations.Length];
        var links = new int[Math.Max(0, stations.Length - 1)];
        for (var i = 0; i < stations.Length; i++)
        {
            nodes[i] = Network.AddJunction(height);
        }

        var fitting = 0;
        for (var i = 0; i < links.Length; i++)
        {
            var loss = _barb;
            while (fitting < run.Fittings.Count && run.Fittings[fitting].Station <= stations[i + 1])
            {
                var f = run.Fittings[fitting++];
                loss += f.Type.Kind is FittingKind.Coupling or FittingKind.Tee ? f.Type.LossThrough : 0;
            }

            links[i] = Network.AddPipe(
                nodes[i],
                nodes[i + 1],
                PipeOf(run.Pipe, (stations[i + 1] - stations[i]) * run.Stretch, loss)
            );
        }

        var node = 0;
        foreach (var place in places)
        {
            while (stations[node] < place.Station)
            {
                node++;
            }

            var open = ValveOpening.Effective(place.Open);
            var branch = Branch(open, row.Pots[place.Pot - 1].Tube ?? _rig.Feed.MicrotubeLength);
            Network.AddEmitter(
                nodes[node],
                new Emitter(Law, place.Outlet, _emitters.Count, 1, open > 0 ? 1 : 0, branch)
            );
            _emitters.Add(new ModelEmitter(row, place with { Open = open }, row.Pots[place.Pot - 1].Planted));
        }

        var leg = new ModelLeg(row, run, stations, nodes, links, -1, -1);
        _legs.Add(leg);
        return leg;
    }

    /// <summary>An opened flush cap at each dead end, shut until asked for: q = A √(2 g h).</summary>
    private void AddFlushCaps()
    {
        for (var i = 0; i < _legs.Count; i++)
        {
            var leg = _legs[i];
            var near = _rig.Reservoir.At == RowEnd.Left;
            var dead = _rig.Feed.Entry switch
            {
                FeedEntry.End => near ? leg.Nodes.Length - 1 : 0,
                FeedEntry.Middle => leg.Nodes.Length - 1,
                _ => -1,
            };
            if (dead < 0)
            {
                continue;
            }

            var coefficient = Area(leg.Run.Pipe) * Math.Sqrt(2 * StandardGravity.Value);
            var cap = Network.AddEmitter(
                leg.Nodes[dead],
                new Emitter(EmitterLaw.Plain(coefficient, 0.5), leg.Run.Path[0].Z, -1, 1, 0)
            );
            var last = leg.Links.Length == 0 ? -1 : leg.Links[dead == 0 ? 0 : ^1];
            _legs[i] = leg with { FlushCap = cap, DeadEndLink = last };
        }
    }

    private Pipe? Branch(double open, double tube)
    {
        if (!_branches.TryGetValue((open, tube), out var branch))
        {
            var feed = _rig.Feed;
            var valve = feed.InlineValves && open > 0;
            var loss = s_tubeEnds + (valve ? ValveOpening.LossCoefficient(0.2, open) : 0);
            branch = tube > 0 || valve ? new Pipe(tube, feed.MicrotubeBore, _parts.Line.Roughness, loss) : null;
            _branches[(open, tube)] = branch;
        }

        return branch;
    }
}
