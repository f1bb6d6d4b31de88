using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Scenes;
using Dripwright.Engine.Tests.Layout;
using Dripwright.Engine.Tests.Planning;
using Dripwright.Engine.Tests.Rigs;
using static System.FormattableString;

namespace Dripwright.Engine.Tests.Scenes;

/// <summary>The rig in the round against the layout it is drawn from.</summary>
public sealed class RigSceneTests
{
    private const double Close = 1e-6; // m

    /// <summary>Each case is a whole plan.</summary>
    private const int Drawn = 30;

    private static readonly Lazy<Plan> s_tenPots = new(() =>
        Planner.Of(TestRigs.TenPots, [], PartsCatalogue.Default, new PlanOptions { Draws = 0 })
    );

    [Fact]
    public void Every_thing_of_random_rigs_that_can_be_seen_is_there_once() =>
        RigGen.Rigs.Holds(
            rig =>
            {
                var plan = Plans.Of(rig);
                var scene = RigScene.Of(plan);
                var layout = plan.Layout;
                Assert.Equal(scene.Things.Count, scene.Things.Select(thing => thing.Name).Distinct().Count());
                Assert.Equal(layout.Stand.Members.Count, Count(SceneKind.Tube));
                var tied = layout.Stand.Joints.Count(joint => joint.Part != StandLayout.Hanger);
                Assert.Equal(
                    tied + layout.Stand.Hangers.Count(hanger => hanger.Mount != HangerMount.Tie),
                    Count(SceneKind.Joint)
                );
                Assert.Equal(layout.Rows.Sum(row => row.Pots.Count), Count(SceneKind.Pot));
                Assert.Equal(layout.Rows.Sum(row => row.Pots.Count(pot => pot.Planted)), Count(SceneKind.Plants));
                Assert.Equal(layout.Runs.Count(), Count(SceneKind.Run));
                Assert.Equal(layout.Rows.Sum(row => row.Emitters.Count), Count(SceneKind.Emitter));
                Assert.Equal(layout.Wires.Count, Count(SceneKind.Wire));
                Assert.Equal(1, Count(SceneKind.Reservoir));
                Assert.Equal(1, Count(SceneKind.Pump));

                int Count(SceneKind kind) => scene.Things.Count(thing => thing.Kind == kind);
            },
            Drawn
        );

    [Fact]
    public void A_run_of_random_rigs_is_whole_from_end_to_end_and_where_the_layout_has_it() =>
        RigGen.Rigs.Holds(
            rig =>
            {
                var plan = Plans.Of(rig);
                var scene = RigScene.Of(plan);
                foreach (var run in plan.Layout.Runs)
                {
                    // Fittings are thicker than the pipe and lie over it.
                    var pipe = PiecesOf(scene, SceneNames.Run(run.Label))
                        .Where(piece => Math.Abs(piece.AtFrom.X - (run.Pipe.OutsideDiameter / 2)) < Close)
                        .ToList();
                    Assert.Equal(0, run.Path[0].DistanceTo(pipe[0].From), Close);
                    Assert.Equal(0, run.Path[^1].DistanceTo(pipe[^1].To), Close);
                    Assert.All(
                        pipe.Zip(pipe.Skip(1)),
                        pair => Assert.Equal(0, pair.First.To.DistanceTo(pair.Second.From), Close)
                    );
                    var legs = run.Path.Zip(run.Path.Skip(1), (a, b) => a.DistanceTo(b)).Sum();
                    Assert.Equal(legs, pipe.Sum(piece => piece.From.DistanceTo(piece.To)), 1e-4);
                }
            },
            Drawn
        );

    [Fact]
    public void All_pieces_of_random_rigs_are_finite_have_width_and_lie_within_the_scene_s_corners() =>
        RigGen.Rigs.Holds(
            rig =>
            {
                var scene = RigScene.Of(Plans.Of(rig));
                foreach (var piece in scene.Pieces)
                {
                    Assert.True(piece.From.DistanceTo(piece.To) > 0, Invariant($"{piece} has no length"));
                    Assert.True(
                        Math.Min(piece.AtFrom.X, piece.AtFrom.Y) > 0 && Math.Min(piece.AtTo.X, piece.AtTo.Y) > 0
                    );
                    Assert.True(double.IsFinite(piece.Speed));
                    foreach (var at in new[] { piece.From, piece.To })
                    {
                        Assert.InRange(at.X, scene.Least.X, scene.Most.X);
                        Assert.InRange(at.Y, scene.Least.Y, scene.Most.Y);
                        Assert.InRange(at.Z, scene.Least.Z, scene.Most.Z);
                    }
                }
            },
            Drawn
        );

    [Fact]
    public void A_pot_stands_at_its_station_and_no_pot_stands_in_another_or_in_the_reservoir()
    {
        var plan = s_tenPots.Value;
        var scene = RigScene.Of(plan);
        var walls = scene.Pieces.Where(piece => piece.Matter == SceneMatter.Pot).ToList();
        Assert.Equal(10, walls.Count);
        for (var i = 0; i < 10; i++)
        {
            // A foot apart, the first half a foot from the row's left end.
            Assert.Equal(plan.Layout.Rows[0].OriginX + ((i + 0.5) * 0.3048), walls[i].From.X, Close);
            Assert.True(i == 0 || walls[i].To.X - walls[i - 1].To.X >= walls[i].AtTo.X + walls[i - 1].AtTo.X - Close);
        }

        var tank = scene.Pieces.First(piece => piece.Matter == SceneMatter.Reservoir);
        Assert.All(walls, wall => Assert.True(Math.Abs(wall.From.X - tank.From.X) > wall.AtTo.X + tank.AtTo.X));
    }

    [Fact]
    public void Water_runs_on_where_the_plan_says_and_as_fast()
    {
        var plan = s_tenPots.Value;
        var scene = RigScene.Of(plan);
        var line = plan.Layout.Rows[0].Feed[0];
        var fastest = PiecesOf(scene, SceneNames.Run(line.Label)).Max(piece => Math.Abs(piece.Speed));
        var bore = Math.PI / 4 * line.Pipe.InsideDiameter * line.Pipe.InsideDiameter;
        Assert.Equal(plan.Feed.Lines[0].Points.Max(point => Math.Abs(point.Flow)) / bore, fastest, 1e-9);

        // All of the drain's water goes one way: to the reservoir.
        var drain = PiecesOf(scene, SceneNames.Run(plan.Layout.Rows[0].Drain.Label)).Where(piece => piece.Speed != 0);
        var toTank = Math.Sign(plan.Layout.Tank.Mouth.X - plan.Layout.Rows[0].Pots[5].Base.X);
        Assert.NotEmpty(drain);
        Assert.All(drain, piece => Assert.Equal(toTank, Math.Sign((piece.To.X - piece.From.X) * piece.Speed)));
        Assert.Equal(
            plan.Drain.Runs.Where(run => run.Label == plan.Layout.Rows[0].Drain.Label)
                .Max(run => run.Surface.Max(point => point.Velocity)),
            drain.Max(piece => Math.Abs(piece.Speed)),
            0.02
        );
    }

    [Fact]
    public void A_tube_is_told_how_far_it_is_used_up_and_the_worst_is_the_plan_s()
    {
        var plan = s_tenPots.Value;
        var tubes = RigScene.Of(plan).Things.Where(thing => thing.Kind == SceneKind.Tube).ToList();
        Assert.All(tubes, tube => Assert.NotNull(tube.Utilisation));
        Assert.Equal(
            plan.Stand!.Rows.Max(row => row.Utilisation)!.Value,
            tubes.Max(tube => tube.Utilisation)!.Value,
            1e-9
        );
    }

    [Fact]
    public void Tubes_of_a_long_row_beyond_the_modules_computed_have_the_figure_of_the_last_one()
    {
        var rig = TestRigs.TenPots with
        {
            Site = TestRigs.TenPots.Site with { RoomLength = 30 },
            Rows = [TestRigs.TenFootRow with { Pots = 40 }],
        };
        var plan = Planner.Of(rig, [], PartsCatalogue.Default, new PlanOptions { Draws = 0 });
        var tubes = RigScene.Of(plan).Things.Where(thing => thing.Kind == SceneKind.Tube).ToList();
        Assert.All(tubes, tube => Assert.NotNull(tube.Utilisation));
    }

    [Fact]
    public void One_pot_is_the_weakest_and_it_is_the_plan_s()
    {
        var plan = s_tenPots.Value;
        var weakest = Assert.Single(RigScene.Of(plan).Things, thing => thing.IsWeakest);
        Assert.Equal((plan.Feed.Weakest!.Row, plan.Feed.Weakest.Pot), (weakest.Row, weakest.Pot));
        Assert.Equal(plan.Feed.Weakest.Flow, weakest.Flow);
    }

    private static List<ScenePiece> PiecesOf(RigScene scene, string name)
    {
        var index = scene.Things.Select((thing, i) => (thing, i)).Single(at => at.thing.Name == name).i;
        return [.. scene.Pieces.Where(piece => piece.Thing == index)];
    }
}
