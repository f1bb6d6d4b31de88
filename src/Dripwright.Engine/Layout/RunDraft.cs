using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Layout;

/// <summary>A run being laid: path, fittings and holes are put on it, then it is cut into pieces.</summary>
internal sealed class RunDraft(string label, RunService service, int row, PipeSize pipe, RigParts parts)
{
    private readonly List<RunFitting> _fittings = [];
    private readonly List<Hole> _holes = [];
    private readonly Dictionary<FittingKind, int> _counts = [];

    public required IReadOnlyList<Vector3> Path { get; set; }

    public required double Start { get; init; }

    public required double End { get; set; }

    public double Stretch { get; init; } = 1;

    /// <summary>[m] Laying length at the start of a fitting that is counted on another run.</summary>
    public double StartLaying { get; init; }

    /// <summary>[m] Laying length at the end of a fitting that is counted on another run.</summary>
    public double EndLaying { get; init; }

    /// <summary>True where couplings are laid from the end towards the start: always away from the end that lies
    /// farthest from the reservoir, so that a mirrored rig gives a mirrored run.</summary>
    public bool FromEnd { get; init; }

    public IReadOnlyList<Hole> Holes => _holes;

    public IReadOnlyList<RunFitting> Fittings => _fittings;

    /// <summary>Puts a fitting on the run.</summary>
    public void Fit(FittingKind kind, double station, bool interrupts = true) =>
        _fittings.Add(new RunFitting(NextLabel(kind), parts.Fitting(pipe, kind), station, interrupts));

    /// <summary>Puts a fitting at a station, or as soon after the last one as both leave the pipe its sockets.</summary>
    /// <returns>[m] Where it came to be.</returns>
    public double FitAfter(FittingKind kind, double wanted)
    {
        var type = parts.Fitting(pipe, kind);
        var least = _fittings.Count switch
        {
            0 when StartLaying > 0 => Start + StartLaying + type.LayingLength + (2 * type.SocketDepth),
            0 => Start,
            _ => _fittings[^1].Station + _fittings[^1].Reach + type.LayingLength + type.SocketDepth,
        };
        var station = Math.Max(wanted, least);
        Fit(kind, station);
        return station;
    }

    /// <summary>Marks a hole; holes may come in any order.</summary>
    public void Drill(double station, HoleUse use, int pot, double diameter) =>
        _holes.Add(new Hole(0, station, use, pot, diameter));

    /// <summary>Numbers the holes from the left. Call once, when all are marked.</summary>
    public void SortHoles()
    {
        _holes.Sort((a, b) => a.Station != b.Station ? a.Station.CompareTo(b.Station) : a.Pot.CompareTo(b.Pot));
        for (var i = 0; i < _holes.Count; i++)
        {
            _holes[i] = _holes[i] with { Number = i + 1 };
        }
    }

    /// <summary>Adds couplings where the stock is too short, cuts the pieces, and closes the draft.</summary>
    /// <param name="joints">Stations at which a joint in the pipe is welcome: the stand's module joints.</param>
    public PipeRun Finish(IReadOnlyList<double> joints)
    {
        AddCouplings(joints);
        _fittings.Sort((a, b) => a.Station.CompareTo(b.Station));
        return new PipeRun
        {
            Label = label,
            Service = service,
            Row = row,
            Pipe = pipe,
            Path = Path,
            Start = Start,
            End = End,
            Stretch = Stretch,
            Fittings = [.. _fittings],
            Holes = [.. _holes],
            Pieces = Cut(),
        };
    }

    private string NextLabel(FittingKind kind)
    {
        var count = _counts.GetValueOrDefault(kind) + 1;
        _counts[kind] = count;
        var letter = kind switch
        {
            FittingKind.Elbow90 or FittingKind.Elbow45 => "e",
            FittingKind.Tee => "t",
            FittingKind.Coupling => "c",
            FittingKind.Cap => "k",
            FittingKind.Adapter => "a",
            FittingKind.Valve => "v",
            FittingKind.CheckValve => "n",
            FittingKind.Barb => "b",
            _ => "u",
        };
        return $"{label}-{letter}{Labels.Of(count)}";
    }

    private void AddCouplings(IReadOnlyList<double> joints)
    {
        var coupling = parts.Fitting(pipe, FittingKind.Coupling);
        var half = coupling.LayingLength + coupling.SocketDepth;
        var stock = StockLength(half);
        var clear = new ClearStations([.. _holes.Select(h => (h.Station, h.Diameter / 2))]);
        List<RunFitting> breaks = [.. _fittings.Where(f => f.Interrupts).OrderBy(f => f.Station)];
        // Worked on stations times a sign, so that "next" is always upwards.
        var sign = FromEnd ? -1 : 1;
        if (FromEnd)
        {
            breaks.Reverse();
        }

        var from = sign * (FromEnd ? End : Start);
        var fromLaying = FromEnd ? EndLaying : StartLaying;
        foreach (var next in breaks.Append(null))
        {
            var to = sign * (next?.Station ?? (FromEnd ? Start : End));
            var toLaying = next?.Type.LayingLength ?? (FromEnd ? StartLaying : EndLaying);
            var toSocket = next?.Type.SocketDepth ?? 0;
            while (((to - from) * Stretch) - fromLaying - toLaying > stock + 1e-9)
            {
                // As far as the stock reaches, but leaving the last piece room for both its sockets.
                var farthest = Math.Min(
                    from + ((stock + fromLaying + coupling.LayingLength) / Stretch),
                    to - ((half + toLaying + toSocket) / Stretch)
                );
                var wanted = LastJoint(joints, from + (0.4 * stock), farthest, sign) ?? farthest;
                var low = from + (0.2 * stock);
                var free =
                    sign > 0
                        ? clear.Nearest(wanted, half, low, farthest)
                        : -clear.Nearest(-wanted, half, -farthest, -low, rightOnTie: true);
                var station = free ?? wanted;
                Fit(FittingKind.Coupling, sign * station);
                from = station;
                fromLaying = coupling.LayingLength;
            }

            from = to;
            fromLaying = toLaying;
        }
    }

    /// <summary>[m] The length that pieces are held to.</summary>
    private double StockLength(double couplingHalf)
    {
        // The shortest stock is the one every shop keeps and a person can carry; a hose's longest coil needs fewest joints.
        // A stock that is hardly longer than its couplings is no stock for a run.
        var longest = pipe.StockLengths.Max();
        return pipe.Flexible
            ? longest
            : pipe.StockLengths.Where(s => s >= 10 * couplingHalf).DefaultIfEmpty(longest).Min();
    }

    /// <summary>The farthest module joint between two bounds, all times the sign.</summary>
    private static double? LastJoint(IReadOnlyList<double> joints, double least, double most, int sign)
    {
        var low = 0;
        var high = joints.Count;
        while (low < high)
        {
            var middle = (low + high) / 2;
            var joint = sign * joints[sign > 0 ? middle : joints.Count - 1 - middle];
            if (joint <= most + 1e-9)
            {
                low = middle + 1;
            }
            else
            {
                high = middle;
            }
        }

        if (low == 0)
        {
            return null;
        }

        var last = sign * joints[sign > 0 ? low - 1 : joints.Count - low];
        return last >= least ? last : null;
    }

    private List<Piece> Cut()
    {
        List<Piece> pieces = [];
        var from = Start;
        var fromLaying = StartLaying;
        List<RunFitting> breaks = [.. _fittings.Where(f => f.Interrupts)];
        foreach (var next in breaks.Append(null))
        {
            var to = next?.Station ?? End;
            var toLaying = next?.Type.LayingLength ?? EndLaying;
            var length = ((to - from) * Stretch) - fromLaying - toLaying;
            if (length > 1e-6)
            {
                pieces.Add(
                    new Piece(
                        $"{label}-{Labels.Letters(pieces.Count)}",
                        from + (fromLaying / Stretch),
                        to - (toLaying / Stretch),
                        length
                    )
                );
            }

            from = to;
            fromLaying = toLaying;
        }

        return pieces;
    }
}
