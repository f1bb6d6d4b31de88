using Dripwright.Engine.Layout;
using Dripwright.Engine.Numerics;
using Dripwright.Engine.Printed;
using Dripwright.Sheets.Model;
using Dripwright.Sheets.Views;

namespace Dripwright.Sheets.Screen;

/// <summary>Where a small part goes: the stand, the pots and the pipes that it serves.</summary>
internal static class SmallPartFigure
{
    private const int RoundSides = 28;

    public static (Slant Slant, List<Element> Elements) Of(RigLayout layout, PrintedPart part, double width)
    {
        var first = part.Spots[0];
        var atTank = first.Row == 0;
        var row = layout.Rows.First(row => atTank || row.Number == first.Row);
        var (from, to) = Slant.Window(row, first.At.X);
        bool Seen(Vector3 p) => p.X >= from && p.X <= to;
        var tubes = layout
            .Stand.Members.Where(tube => tube.Row == row.Number && Seen(tube.From) && Seen(tube.To))
            .ToList();
        var pots = row.Pots.Where(pot => Seen(pot.Base)).ToList();
        var pipes = Pipes(layout, row, part, from, to).ToList();
        var spots = part.Spots.Where(spot => spot.Row == first.Row && (atTank || Seen(spot.At))).ToList();
        List<IReadOnlyList<Vector3>> tank = atTank ? [.. Tank(layout.Tank)] : [];
        var slant = new Slant(
            tubes
                .SelectMany(tube => new[] { tube.From, tube.To })
                .Concat(pots.SelectMany(pot => Rim(row, pot)).Concat(pots.Select(pot => pot.Base)))
                .Concat(pipes.SelectMany(pipe => new[] { pipe.From, pipe.To }))
                .Concat(tank.SelectMany(side => side))
                .Concat(spots.Select(spot => spot.At)),
            width
        );
        List<Element> elements =
        [
            .. tubes.Select(tube => new Line(slant.At(tube.From), slant.At(tube.To), Pen.Thin)),
            .. tank.Select(side => Polyline.Polygon([.. side.Select(slant.At)], Pen.Thin, Fill.Paper)),
        ];
        // Far pots first: near ones stand before them.
        foreach (var pot in pots.OrderByDescending(pot => pot.Base.Y).ThenBy(pot => pot.Base.X))
        {
            elements.AddRange(Pot(slant, row, pot));
        }

        elements.AddRange(pipes.Select(pipe => new Line(slant.At(pipe.From), slant.At(pipe.To), Pen.Water)));
        elements.AddRange(slant.Marks(part.Number, spots.Select(spot => spot.At), []));
        return (slant, elements);
    }

    private static IEnumerable<(Vector3 From, Vector3 To)> Pipes(
        RigLayout layout,
        RowLayout row,
        PrintedPart part,
        double from,
        double to
    )
    {
        var runs = part.Design.Kind switch
        {
            PrintedKind.LineRest => row.Feed,
            PrintedKind.DrillGuide => row
                .Feed.Append(row.Drain)
                .Where(run => run.Pipe.OutsideDiameter == part.Design.Parameters.PipeOutside),
            PrintedKind.HoseClip or PrintedKind.ClampBlock => layout
                .Runs.Where(run => run.Service == RunService.Header)
                .Take(1),
            _ => [],
        };
        var least = Math.Min(from, layout.Tank.Left);
        var most = Math.Max(to, layout.Tank.Right);
        return runs.SelectMany(run => run.Path.Zip(run.Path.Skip(1)))
            .Where(leg =>
                part.Design.Kind is not (PrintedKind.HoseClip or PrintedKind.ClampBlock) || leg.First.Y == leg.Second.Y
            )
            .Select(leg => Clipped(leg.First, leg.Second, least, most))
            .OfType<(Vector3, Vector3)>();
    }

    private static (Vector3 From, Vector3 To)? Clipped(Vector3 a, Vector3 b, double least, double most)
    {
        if (Math.Max(a.X, b.X) < least || Math.Min(a.X, b.X) > most)
        {
            return null;
        }

        Vector3 Cut(Vector3 p)
        {
            var x = Math.Clamp(p.X, least, most);
            if (x == p.X)
            {
                return p;
            }

            var share = (x - a.X) / (b.X - a.X);
            return new(x, a.Y + (share * (b.Y - a.Y)), a.Z + (share * (b.Z - a.Z)));
        }

        return (Cut(a), Cut(b));
    }

    private static IEnumerable<Element> Pot(Slant slant, RowLayout row, PotPlace pot)
    {
        var rim = Rim(row, pot).ToList();
        var ratio = PotSymbol.BaseRatio(row.Pot);
        var foot = rim.Select(p => new Vector3(
                pot.Base.X + (ratio * (p.X - pot.Base.X)),
                pot.Base.Y + (ratio * (p.Y - pot.Base.Y)),
                pot.Base.Z
            ))
            .ToList();
        // The wall hides what is behind it; its outline is that of rim and base together.
        yield return Polyline.Polygon(Hull([.. rim.Concat(foot).Select(slant.At)]), Pen.Explain, Fill.Paper);
        yield return Polyline.Polygon([.. rim.Select(slant.At)], Pen.Explain, Fill.Paper);
    }

    private static IEnumerable<Vector3> Rim(RowLayout row, PotPlace pot)
    {
        var (half, deep) = (row.Pot.Length / 2, row.Pot.Width / 2);
        var sides = row.Pot.Round ? RoundSides : 4;
        for (var i = 0; i < sides; i++)
        {
            var angle = 2 * Math.PI * (i + 0.5) / sides;
            var (x, y) = row.Pot.Round
                ? (Math.Cos(angle), Math.Sin(angle))
                : (Math.Sign(Math.Cos(angle)), Math.Sign(Math.Sin(angle)));
            yield return new(pot.Base.X + (half * x), pot.Base.Y + (deep * y), pot.Base.Z + row.Pot.Height);
        }
    }

    private static IEnumerable<IReadOnlyList<Vector3>> Tank(TankPlace tank)
    {
        yield return
        [
            new(tank.Left, tank.Front, tank.Rim),
            new(tank.Right, tank.Front, tank.Rim),
            new(tank.Right, tank.Back, tank.Rim),
            new(tank.Left, tank.Back, tank.Rim),
        ];
        yield return
        [
            new(tank.Right, tank.Front, tank.Floor),
            new(tank.Right, tank.Back, tank.Floor),
            new(tank.Right, tank.Back, tank.Rim),
            new(tank.Right, tank.Front, tank.Rim),
        ];
        yield return
        [
            new(tank.Left, tank.Front, tank.Floor),
            new(tank.Right, tank.Front, tank.Floor),
            new(tank.Right, tank.Front, tank.Rim),
            new(tank.Left, tank.Front, tank.Rim),
        ];
    }

    /// <summary>Around points, counter-clockwise (Andrew's monotone chain).</summary>
    private static List<Point> Hull(List<Point> points)
    {
        var sorted = points.OrderBy(p => p.X).ThenBy(p => p.Y).ToList();
        List<Point> Half(IEnumerable<Point> way)
        {
            List<Point> chain = [];
            foreach (var p in way)
            {
                while (chain.Count > 1 && Turn(chain[^2], chain[^1], p) <= 0)
                {
                    chain.RemoveAt(chain.Count - 1);
                }

                chain.Add(p);
            }

            chain.RemoveAt(chain.Count - 1);
            return chain;
        }

        return [.. Half(sorted), .. Half(Enumerable.Reverse(sorted))];
    }

    private static double Turn(Point a, Point b, Point c) => ((b.X - a.X) * (c.Y - a.Y)) - ((b.Y - a.Y) * (c.X - a.X));
}
