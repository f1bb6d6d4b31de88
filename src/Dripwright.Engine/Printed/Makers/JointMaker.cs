using Dripwright.Engine.Phrases;
using Dripwright.Engine.Printed.Joints;
using Dripwright.Engine.Printed.Lettering;
using Dripwright.Engine.Printed.Shapes;

namespace Dripwright.Engine.Printed.Makers;

/// <summary>Joints with sockets in several directions.</summary>
internal static class JointMaker
{
    /// <summary>[rad] Tubes nearer to each other than this leave no room for their sockets.</summary>
    public const double LeastAngle = Math.PI / 6;

    private const double DrainHole = 0.004;

    public static PrintDesign Make(PrintedKind kind, PrintParameters parameters)
    {
        var directions = parameters.Sockets ?? SocketPattern.Usual(kind);
        var pose = PrintPose.Of(directions);
        var form = SocketForm.For(parameters, pose.Ways.Any(w => !PrintPose.IsFlat(w)), pose.Flat > 0);
        var lay = Lay(form, directions);
        var reach = lay + form.Depth;

        var square = pose.Ways.All(way => PrintPose.IsFlat(way) && (way.X == 0 || way.Y == 0));
        var hub = Hub(form, square || pose.Ways.All(w => w.X == 0 || w.Y == 0));
        List<Solid> parts = [hub];
        parts.AddRange(pose.Ways.Select(way => new Extrusion(form.Outline, reach).Placed(Frame(way))));
        // Half the hub lies within each flat arm of a square joint, and all that two arms share lies in the hub.
        var atLeast = pose.Ways.Sum(way => HubIn(way, form, hub));
        double? shared = square ? atLeast : null;
        var lettered = pose.Ways.FirstOrDefault(PrintPose.IsFlat);
        var text = lettered.Length > 0.5 ? TextLength(parameters, form) : 0;
        if (form.LoadRules)
        {
            Rib[] ribs = [.. Ribs(form, pose.Ways, Math.Min(0.5 * form.Depth, reach - form.Outer - text - 0.003))];
            shared = ribs.Length > 0 ? null : shared;
            atLeast += ribs.Sum(rib => rib.InArms);
            parts.AddRange(ribs.Select(rib => rib.Web));
        }

        List<Solid> cuts = [];
        double bored = 0;
        var drained = false;
        foreach (var way in pose.Ways)
        {
            (var cut, var volume) = PrintPose.IsUpright(way)
                ? form.UprightBore(form.Depth)
                : form.LyingBore(form.Depth);
            cuts.Add(cut.Placed(Frame(way) with { Origin = lay * way }));
            bored += volume;
        }

        foreach ((var way, var room) in pose.Ways.Zip(directions))
        {
            if (room.Unit().Z > 0.3)
            {
                cuts.Add(Drain(form, way, pose.Ways, lay));
                drained = true;
            }
        }

        Solid body = new Difference(new Union(parts, shared, atLeast), cuts, drained ? null : bored, bored);
        body = Lettered(body, form, lettered, pose.Ways, reach, text);
        return new()
        {
            Kind = kind,
            Parameters = parameters,
            Shape = body.Shifted(0, 0, form.Outer),
            InUse = pose.Turn.Inverse().After(Placement.Shifted(new(0, 0, -form.Outer))),
            Sockets =
            [
                .. pose.Ways.Select(way => new Socket(
                    lay * way + new Vector3(0, 0, form.Outer),
                    way,
                    form.Depth,
                    form.Half
                )),
            ],
            Wall = form.Wall,
            Strength = form.Strength,
            Orientation = Orientation(pose),
            LongestBridge = pose.Flat > 0 ? form.Bridge : 0,
            NeedsSupport = pose.NeedsSupport,
        };
    }

    /// <summary>[m] From the centre to the tube's end: the bores of any two sockets stay a wall apart.</summary>
    private static double Lay(SocketForm form, IReadOnlyList<Vector3> directions)
    {
        var angle = SocketPattern.LeastAngle(directions);
        // A slanting square bore may turn a corner to its neighbour.
        var half = (form.Half + form.Lift) * (form.Round || Math.Abs(Math.Cos(angle)) < 1e-6 ? 1 : Math.Sqrt(2));
        var least = (half / Math.Tan(angle / 2)) + (form.Wall / 2);
        if (form.Parameters.JointCentre is not { } given)
        {
            return least;
        }

        return given >= least
            ? given
            : throw new PrintException(
                new(
                    nameof(PrintParameters.JointCentre),
                    Phrase.Of(Measured.Millimetres(given)),
                    Phrase.Of("print.limit.centre", Measured.Millimetres(least)),
                    Phrase.Of("print.remedy.centre")
                )
            );
    }

    private static Placement Frame(Vector3 way) =>
        PrintPose.IsUpright(way) ? Placement.None : Placement.Along(way, Vector3.Up.Cross(way), default);

    private static Lathe Hub(SocketForm form, bool square)
    {
        (var r, var c) = (form.Outer, form.Bevel);
        return new(
            new([new(0, -r), new(r - c, -r), new(r, c - r), new(r, r - c), new(r - c, r), new(0, r)]),
            square ? 4 : 16
        );
    }

    /// <summary>[m³] What of the hub lies within an arm, at least; a round hub's facets stand out a little from the arm.</summary>
    private static double HubIn(Vector3 way, SocketForm form, Lathe hub)
    {
        var half = hub.Volume!.Value / 2;
        var circle = Math.PI / (hub.Sides * Math.Tan(Math.PI / hub.Sides));
        var square = hub.Sides == 4;
        return way switch
        {
            _ when PrintPose.IsFlat(way) => square ? half : circle * half,
            // Four edges stand out from the upright arm.
            _ when PrintPose.IsUpright(way) => square
                ? half - (2 * form.Bevel * form.Bevel * form.Outer)
                : circle * half,
            _ => 0,
        };
    }

    /// <summary>A web between two sockets.</summary>
    /// <param name="Web">The solid.</param>
    /// <param name="InArms">[m³] What of it lies within the two sockets, at least.</param>
    private readonly record struct Rib(Solid Web, double InArms);

    /// <summary>Flat webs in the corners between flat sockets, standing ones between flat and upright.</summary>
    private static IEnumerable<Rib> Ribs(SocketForm form, IReadOnlyList<Vector3> ways, double leg)
    {
        if (leg < 0.002)
        {
            yield break;
        }

        (var r, var end) = (form.Outer, form.Outer + leg);
        var web = new Loop([new(0, 0), new(end, 0), new(end, r), new(r, end), new(0, end)]);
        var thickness = 1.5 * form.Wall;
        // At least so far from its axis an arm fills the web's plane; the rest of the web is a triangle with two tips cut off.
        var filled = r - form.Bevel;
        var open = (Math.Pow(end + r - (2 * filled), 2) / 2) - Math.Pow(r - filled, 2);
        var within = web.Area - open;
        foreach (var a in ways.Where(PrintPose.IsFlat))
        {
            foreach (var b in ways.Where(way => Math.Abs(a.Dot(way)) < 1e-6))
            {
                if (PrintPose.IsUpright(b))
                {
                    var side = a.Cross(Vector3.Up);
                    var standing = new Extrusion(web, thickness).Placed(
                        new(a, Vector3.Up, side, -(thickness / 2) * side)
                    );
                    yield return new(standing, thickness / 2 <= r ? thickness * within : 0);
                }
                else if (PrintPose.IsFlat(b) && a.Cross(b).Z > 0)
                {
                    // From the bed up to the middle of the sockets.
                    yield return new(new Extrusion(web, r).Placed(new(a, b, Vector3.Up, new(0, 0, -r))), r * within);
                }
            }
        }
    }

    /// <summary>A hole through the wall just over the floor of a socket that would hold rain or spilt water.</summary>
    private static Solid Drain(SocketForm form, Vector3 way, IReadOnlyList<Vector3> ways, double lay)
    {
        var frame = Frame(way);
        var best = Enumerable
            .Range(0, 8)
            .Select(i => (Math.Cos(i * Math.PI / 4) * frame.X) + (Math.Sin(i * Math.PI / 4) * frame.Y))
            .MinBy(side => ways.Where(w => w != way).Select(w => w.Dot(side)).DefaultIfEmpty(-1).Max());
        var start = (lay + (DrainHole / 2)) * way;
        return new Extrusion(Loop.Around(24, DrainHole / 2), 3 * form.Outer).Placed(Placement.Along(best, way, start));
    }

    private static double TextLength(PrintParameters parameters, SocketForm form)
    {
        var height = RaisedText.Height(parameters.Number, form.Depth - 0.002, form.Flat - 0.001, parameters.Printer);
        return StrokeLetters.Width(parameters.Number, height);
    }

    private static Solid Lettered(
        Solid body,
        SocketForm form,
        Vector3 flat,
        IReadOnlyList<Vector3> ways,
        double reach,
        double text
    )
    {
        var printer = form.Parameters.Printer;
        var room = form.Depth - 0.002;
        if (flat.Length > 0.5)
        {
            var middle = reach - 0.001 - ((text > 0 ? text : room) / 2);
            var face = new Placement(
                flat,
                Vector3.Up.Cross(flat),
                Vector3.Up,
                (middle * flat) + new Vector3(0, 0, form.Outer)
            );
            return RaisedText.On(body, form.Parameters.Number, face, room, form.Flat - 0.001, printer);
        }

        // No flat socket: along the first one, on the side that faces away from the bed's middle.
        var way = ways[0];
        var frame = Frame(way);
        var outwards = frame.X;
        var side = new Placement(
            way,
            outwards.Cross(way),
            outwards,
            ((reach - 0.001 - (room / 2)) * way) + (form.Outer * outwards)
        );
        return RaisedText.On(body, form.Parameters.Number, side, room, form.Flat - 0.001, printer);
    }

    private static Phrase Orientation(PrintPose pose)
    {
        var flat =
            pose.Flat == pose.Ways.Count
                ? Phrase.Of("print.lay.joint.flat")
                : Phrase.Counted("print.lay.joint.upright", pose.Flat);
        var support = Phrase.Of(pose.NeedsSupport ? "print.lay.joint.support" : "print.lay.joint.free");
        return Phrase.Of(new Several([flat, support], Joint.Sentence));
    }
}
