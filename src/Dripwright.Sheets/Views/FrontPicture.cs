using Dripwright.Engine;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Numerics;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Wires;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Views;

/// <summary>One row, or a part of it, from the front.</summary>
/// <param name="plan">The plan.</param>
/// <param name="row">The row.</param>
/// <param name="view">X to the right, height up.</param>
/// <param name="whole">All there is to see.</param>
/// <param name="part">What this sheet shows of it.</param>
/// <param name="band">Where its crop wires stand.</param>
internal sealed class FrontPicture(Plan plan, RowLayout row, View view, Extent whole, Extent part, WireBand band)
{
    private const double HeightsOff = 4;
    private readonly RigLayout _layout = plan.Layout;
    private readonly Wording _wording = new(plan.Rig.Units);
    private readonly SideParts _side = new(view, p => p.X);
    private readonly RunPainter _painter = new(plan.Rig, p => view[p.X, p.Z]);
    private readonly WirePicture _over = new(plan, view, band);
    private readonly IReadOnlyList<LoadedWire> _wires = WirePicture.Of(plan, row);

    private bool TankLeft => plan.Rig.Reservoir.At == RowEnd.Left;

    private bool WithTank => row.Number == 1;

    private bool CutLeft => part.Left > whole.Left + 1e-9;

    private bool CutRight => part.Right < whole.Right - 1e-9;

    private double Top => view[0, whole.High].Y - Math.Max(PotSymbol.PlantHeight(view), band.Above);

    /// <summary>[mm] Lower edge of the drawn thing.</summary>
    private double Bottom => view[0, whole.Low].Y;

    /// <summary>What there is to see of a row: the row, and with the first one the reservoir and the way to it.</summary>
    public static Extent ExtentOf(Plan plan, RowLayout row)
    {
        var points = RunsOf(plan.Layout, row).SelectMany(r => r.Path).ToList();
        var (tank, first) = (plan.Layout.Tank, row.Number == 1);
        double[] xs =
        [
            row.OriginX + Math.Min(0, row.Pots[0].Station - (row.Pot.Length / 2)),
            row.OriginX + Math.Max(row.Length, row.Pots[^1].Station + (row.Pot.Length / 2)),
            .. points.Select(p => p.X),
            .. first ? new[] { tank.Left, tank.Right } : [],
        ];
        double[] zs =
        [
            row.Floor,
            row.Base + row.Pot.Height,
            .. points.Select(p => p.Z),
            .. first ? new[] { 0, tank.Floor, tank.Rim } : [],
        ];
        return new(xs.Min(), zs.Min(), xs.Max(), zs.Max());
    }

    /// <summary>Where the row's crop wires stand at a scale.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="row">The row.</param>
    /// <param name="scale">The scale.</param>
    /// <param name="spare">[mm] Height on paper that is left over.</param>
    public static WireBand BandOf(Plan plan, RowLayout row, Scale scale, double spare = 0) =>
        WireBand.Of(WirePicture.Of(plan, row), ExtentOf(plan, row).High, scale, spare);

    /// <summary>Room that dimensions need at a scale.</summary>
    public static Margins Margins(Plan plan, RowLayout row, Scale scale, double spare = 0)
    {
        var words = new Wording(plan.Rig.Units);
        var (far, near) = (
            HeightsOff + Room(FarHeights(plan, row), words),
            HeightsOff + Room(NearHeights(plan, row), words)
        );
        var left = plan.Rig.Reservoir.At == RowEnd.Left;
        // Plants and their names stand within the wires' band.
        var top = Math.Max(21, 13 + BandOf(plan, row, scale, spare).Above) + PotDimensions.Depth(row, scale, words);
        return new(left ? near : far, top, left ? far : near, 37);
    }

    /// <summary>The picture.</summary>
    /// <param name="dimensions">Whether with its dimensions.</param>
    public IEnumerable<Element> Draw(bool dimensions = true)
    {
        var window = new Box(
            view[part.Left, 0].X - (CutLeft ? 0 : 6),
            Top - 4,
            view[part.Right, 0].X - view[part.Left, 0].X + (CutLeft ? 0 : 6) + (CutRight ? 0 : 6),
            Bottom - Top + 9
        );
        yield return new Group([.. Things()]) { Clip = window.Corners };
        foreach (var pot in row.Pots.Where(p => Shown(p.Base.X)).OrderByDescending(p => p.Base.Y))
        {
            var behind = pot.BackLine && row.Pots.Any(p => !p.BackLine);
            yield return PotSymbol.FromSide(row, pot, pot.Base.X, row.Pot.Length, view, behind, numbered: true);
        }

        yield return new Group([
            .. Runs()
                .Where(r => r.Service is RunService.Header or RunService.Feed or RunService.Bypass)
                .Select(r => _painter.Draw(r, fittings: true)),
        ])
        {
            Clip = window.Corners,
        };
        foreach (var element in (Element[])[.. Breaks(), .. Texts(), .. dimensions ? Dimensions() : [], .. Marks()])
        {
            yield return element;
        }
    }

    private static IEnumerable<PipeRun> RunsOf(RigLayout layout, RowLayout row) =>
        layout
            .Runs.Where(r => r.Row == row.Number || (r.Row == 0 && row.Number == 1 && r.Label != "G"))
            .Where(r => r.Label != "C" || layout.Rows.Count == 1 || row.Number == 1);

    private bool Shown(double x) => x >= part.Left - 1e-9 && x <= part.Right + 1e-9;

    private IEnumerable<PipeRun> Runs() =>
        RunsOf(_layout, row).Where(r => r.Path.Min(p => p.X) <= part.Right && r.Path.Max(p => p.X) >= part.Left);

    private IEnumerable<Element> Things()
    {
        var (left, right) = (row.OriginX - 0.1, row.OriginX + row.Length + 0.1);
        foreach (var element in _side.Floor(left, right, row.Floor))
        {
            yield return element;
        }

        var tank = _layout.Tank;
        if (WithTank && tank.Right >= part.Left && tank.Left <= part.Right)
        {
            foreach (var element in tank.Floor >= 0 ? _side.Floor(tank.Left - 0.1, tank.Right + 0.1, 0) : [])
            {
                yield return element;
            }

            yield return _side.Tank(tank, tank.Left, tank.Right);
            if (_layout.Parts.Pump is not null)
            {
                yield return _side.Pump(tank);
            }
        }

        yield return _side.Stand(
            _layout.Stand,
            m => m.Row == row.Number && m.Role != MemberRole.Cross,
            j => j.Row == row.Number
        );
        foreach (var run in Runs().Where(r => r.Service is RunService.Drain or RunService.Return))
        {
            yield return _painter.Draw(run, fittings: true);
        }

        if (_wires.Count > 0)
        {
            foreach (var wire in _wires)
            {
                yield return _over.Along(wire, row);
            }

            foreach (var element in _over.Breaks(view[left, 0].X - 3, view[right, 0].X + 3))
            {
                yield return element;
            }
        }
    }

    private IEnumerable<Element> Breaks()
    {
        foreach (var (cut, x) in new[] { (CutLeft, part.Left), (CutRight, part.Right) })
        {
            if (cut)
            {
                yield return Mark.Break(new(view[x, 0].X, Top), new(view[x, 0].X, Bottom + 4));
            }
        }
    }

    private IEnumerable<Element> Texts()
    {
        var half = view.Length(Math.Min(row.Pot.Length, row.Spec.Spacing)) / 2;
        var visible = row.Pots.Where(p => Shown(p.Base.X)).ToList();
        if (visible.Count > 0)
        {
            foreach (
                var element in CropSpans.Draw(
                    row with
                    {
                        Pots = visible,
                    },
                    s => view[row.OriginX + s, 0].X,
                    half,
                    view[0, row.Base + row.Pot.Height].Y - PotSymbol.PlantHeight(view) - 1.5,
                    above: true
                )
            )
            {
                // Strings run behind the names.
                if (_wires.Count > 0 && element is Text name)
                {
                    yield return Polyline.Polygon(TextMeasure.Corners(name), null, Fill.Paper);
                }

                yield return element;
            }
        }

        var (from, to) = (Math.Max(part.Left, row.OriginX), Math.Min(part.Right, row.OriginX + row.Length));
        if (_wires.Count > 0 && to > from)
        {
            yield return _over.Label(_wires, view[from, 0].X + 2, view[to, 0].X);
            // Over the reservoir's side, where no string hangs.
            if (band.Broken && !(TankLeft ? CutLeft : CutRight))
            {
                var style = TextStyle.Small with { Anchor = TankLeft ? Anchor.End : Anchor.Start };
                var x = TankLeft ? view[row.OriginX - 0.1, 0].X - 4 : view[row.OriginX + row.Length + 0.1, 0].X + 4;
                yield return new Text(Words.Of("sheet.front.left-out"), new(x, band.Breaks(view).Upper + 2), style);
            }
        }

        if (Math.Min(part.Right, row.OriginX + row.Length) - Math.Max(part.Left, row.OriginX) > 0.05)
        {
            yield return SlopeNote();
        }
    }

    private Group SlopeNote()
    {
        var drain = row.Drain;
        var text =
            plan.Rig.Drain.Slope > 0
                ? Words.Of("sheet.front.falls", drain.Label, _wording.Slope(plan.Rig.Drain.Slope))
                : Words.Of("sheet.front.level", drain.Label);
        var (from, to) = (Math.Max(part.Left, row.OriginX), Math.Min(part.Right, row.OriginX + row.Length));
        Point Tip(double share)
        {
            var tip = drain.At(from + ((to - from) * share) - row.OriginX);
            return view[tip.X, tip.Z];
        }

        var width = TextMeasure.Width(text, TextStyle.Note) + 1.5;
        var (floor, right) = (view[0, row.Floor].Y, view[part.Right, 0].X + 20);
        double[] shares = [0.3, 0.4, 0.2, 0.5, 0.6, 0.7, 0.1, 0.8];
        double[] depths = [8, 10, 6, 13, 16, 20];
        var places =
            from share in shares
            from depth in depths
            from side in new[] { 5, -5 }
            let at = Tip(share)
            let knee = at.Move(side, depth)
            let box = new Box(side > 0 ? knee.X : knee.X - width, knee.Y - 4.4, width, 5.2)
            where box.Right <= right && box.Bottom < floor - 0.5 && !OnSomething(box)
            select (at, knee);
        var found = places.Take(1).ToList();
        if (found.Count > 0)
        {
            return DimensionLine.Leader(found[0].at, found[0].knee, text);
        }

        // No free place, as on a low stand at a small scale: the text covers what lies beneath.
        var crowded = Tip(0.3);
        return DimensionLine.Leader(crowded, crowded.Move(crowded.X + 40 > right ? -5 : 5, 8), text);
    }

    /// <summary>Whether a tube of the stand or a pipe runs through the box.</summary>
    private bool OnSomething(Box box)
    {
        var room = box.Inset(-view.Length(_layout.Stand.Tube.Outside) / 2);
        return _layout
                .Stand.Members.Where(m => m.Row == row.Number)
                .Any(m => room.Crosses(view[m.From.X, m.From.Z], view[m.To.X, m.To.Z]))
            || Runs().Any(r => r.Path.Zip(r.Path.Skip(1)).Any(leg => box.Crosses(On(leg.First), On(leg.Second))));

        Point On(Vector3 p) => view[p.X, p.Z];
    }

    private IEnumerable<Element> Dimensions()
    {
        var y = Top - 7;
        var shown = row.Pots.Where(p => Shown(p.Base.X)).ToList();
        Point Pot(double s) => new(view[row.OriginX + s, 0].X, y + 2);
        if (!CutLeft && !CutRight)
        {
            yield return PotDimensions.Draw(row, Pot, y, view.Scale, _wording, below: false);
        }
        else if (shown.Count > 1)
        {
            yield return PartDimensions(shown, Pot, y);
        }

        Point Foot(double x) => new(view[x, 0].X, Bottom + 5);
        if (!CutLeft && !CutRight)
        {
            var chain = new ModuleDimensions(row, WithTank ? _layout.Tank : null, view.Scale, _wording);
            // Figures without room hang below their chain, which then lies outermost.
            var (own, chained) = chain.Overflows ? (13, 21) : (21, 13);
            var (left, right) = (Foot(row.OriginX), Foot(row.OriginX + row.Length));
            var overall = DimensionLine.Horizontal(left, right, Bottom + own, _wording.Mark(row.Length));
            var modules = chain.Draw(Foot, Bottom + chained);
            // The outer one first: its extension lines must not cross the inner one's figures.
            yield return chain.Overflows ? modules : overall;
            yield return chain.Overflows ? overall : modules;
        }
        else
        {
            var joints = row
                .Joints.Select(j => row.OriginX + j)
                .Where(x => x >= part.Left - 1e-9 && x <= part.Right + 1e-9)
                .ToList();
            if (joints.Count > 1)
            {
                yield return DimensionLine.HorizontalChain(
                    [.. joints.Select(Foot)],
                    Bottom + 13,
                    [.. joints.Skip(1).Select(_ => _wording.Mark(row.Spec.ModuleLength))]
                );
            }
        }

        foreach (var group in Heights())
        {
            yield return group;
        }
    }

    /// <summary>The pitch between the pots of a part; where the first stands is told in the notes.</summary>
    private Group PartDimensions(List<PotPlace> shown, Func<double, Point> at, double y) =>
        DimensionLine.HorizontalChain(
            [at(shown[0].Station), at(shown[^1].Station)],
            y,
            [_wording.Repeated(shown.Count - 1, row.Spec.Spacing)]
        );

    private static double Room(IReadOnlyList<(double Height, string Name)> heights, Wording words) =>
        SideParts.HeightsRoom(heights, words);

    private static (double Height, string Name)[] FarHeights(Plan plan, RowLayout row) =>
        [
            (row.Floor, Words.Of("sheet.height.floor")),
            (row.Base, Words.Of("sheet.height.pots")),
            (row.Base + row.Pot.Height, Words.Of("sheet.height.rim")),
            (row.Feed[0].Path[0].Z, Words.Of("sheet.height.feed")),
            (row.Drain.Path.Max(p => p.Z), Words.Of("sheet.height.drain")),
            .. WirePicture.Of(plan, row).Take(1).Select(w => (w.Place.Z, Words.Of("sheet.height.wire"))),
        ];

    private static (double Height, string Name)[] NearHeights(Plan plan, RowLayout row) =>
        row.Number == 1
            ? SideParts.TankHeights(plan.Layout.Tank)
            :
            [
                (row.Floor, Words.Of("sheet.height.floor")),
                (row.Drain.Path.Min(p => p.Z), Words.Of("sheet.height.drain-low")),
            ];

    private IEnumerable<Group> Heights()
    {
        var (far, near) = (FarHeights(plan, row), NearHeights(plan, row));
        if (!(TankLeft ? CutRight : CutLeft))
        {
            var x = TankLeft ? part.Right : part.Left;
            yield return _side.Heights(
                far,
                TankLeft ? Math.Max(row.OriginX + row.Length, part.Right) : Math.Min(row.OriginX, part.Left),
                view[x, 0].X + (TankLeft ? HeightsOff : -HeightsOff),
                TankLeft,
                _wording,
                band.Drawn
            );
        }

        if (!(TankLeft ? CutLeft : CutRight))
        {
            var x = TankLeft ? part.Left : part.Right;
            yield return _side.Heights(
                near,
                x,
                view[x, 0].X + (TankLeft ? -HeightsOff : HeightsOff),
                !TankLeft,
                _wording
            );
        }
    }

    private IEnumerable<Element> Marks()
    {
        // Under the row, where only legs stand.
        var y = Math.Max(view[0, row.Floor].Y - 5, view[0, row.Base].Y + 5);
        return FindingMarks
            .Along(
                FindingMarks.Of(plan).Where(f => f.Row == row.Number && f.At is { } at && Shown(at.X)),
                at => view[at.X, 0].X,
                view[part.Left, 0].X,
                view[part.Right, 0].X
            )
            .Select(mark =>
                Mark.Finding(new(mark.X, y), mark.Finding.Grade, Wording.Count(mark.Finding.Number)) with
                {
                    Description = mark.Finding.What,
                }
            );
    }
}
