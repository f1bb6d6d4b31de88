using Dripwright.Engine.Catalogue;

namespace Dripwright.Engine.Tests.Catalogue;

/// <summary>Our own rows against each other and against what their names say.</summary>
public sealed class CatalogueRowTests
{
    private static readonly PartsCatalogue s_parts = PartsCatalogue.Default;

    [Fact]
    public void Every_row_has_a_source_and_invented_rows_say_so()
    {
        foreach (var entry in s_parts.All)
        {
            Assert.False(string.IsNullOrWhiteSpace(entry.Source), entry.Key);
            Assert.False(string.IsNullOrWhiteSpace(entry.Name), entry.Key);
            Assert.True(!entry.Source.Contains("invented", StringComparison.Ordinal) || entry.Invented, entry.Key);
        }
        Assert.All(s_parts.Pots.Values, pot => Assert.True(pot.Invented));
        Assert.All(s_parts.Tanks.Values, tank => Assert.True(tank.Invented));
        Assert.All(s_parts.Pumps.Values, pump => Assert.True(pump.Invented));
        Assert.All(s_parts.Emitters.Values, emitter => Assert.True(emitter.Invented));
    }

    [Fact]
    public void No_key_stands_on_two_shelves_and_all_are_found()
    {
        var keys = s_parts.All.Select(entry => entry.Key).ToList();
        Assert.Equal(keys.Count, keys.Distinct(StringComparer.Ordinal).Count());
        Assert.All(keys, key => Assert.Equal(key, s_parts.TryFind(key)?.Key));
        Assert.Null(s_parts.TryFind("pvc40-7"));
    }

    [Fact]
    public void Measures_of_every_row_fit_each_other()
    {
        foreach (var entry in s_parts.All)
        {
            Assert.Empty(CatalogueRules.Misfits(entry).Select(misfit => $"{entry.Key}: {misfit}"));
        }
    }

    [Fact]
    public void Every_pipe_has_its_whole_set_of_fittings()
    {
        foreach (var pipe in s_parts.Pipes.Values)
        {
            foreach (var kind in Enum.GetValues<FittingKind>())
            {
                var wanted = kind switch
                {
                    FittingKind.Barb => pipe.Flexible,
                    FittingKind.Union => !pipe.Flexible,
                    _ => true,
                };
                Assert.Equal(wanted, s_parts.FittingFor(pipe, kind) is not null);
            }
        }
    }

    [Fact]
    public void Every_fitting_belongs_to_a_pipe_and_is_the_only_one_of_its_kind()
    {
        foreach (var fitting in s_parts.Fittings.Values)
        {
            var pipe = Assert.Single(
                s_parts.Pipes.Values,
                pipe => pipe.Family == fitting.Family && pipe.Nominal == fitting.Nominal
            );
            Assert.StartsWith(pipe.Key + "-", fitting.Key, StringComparison.Ordinal);
            Assert.Same(fitting, s_parts.FittingFor(pipe, fitting.Kind));
            Assert.True(fitting.OutsideDiameter > pipe.OutsideDiameter, fitting.Key);
            Assert.True(fitting.SocketDepth > 0.4 * pipe.OutsideDiameter, fitting.Key);
            Assert.True(fitting.LayingLength < 2 * pipe.OutsideDiameter, fitting.Key);
        }
    }

    [Fact]
    public void Hoses_are_clamped_once_at_every_barb_and_rigid_pipe_never()
    {
        foreach (var pipe in s_parts.Pipes.Values)
        {
            Assert.Equal(pipe.Flexible, s_parts.ClampFor(pipe) is not null);
            Assert.Equal(pipe.Flexible ? 3 : 0, s_parts.FittingFor(pipe, FittingKind.Tee)!.Clamps);
            Assert.Equal(pipe.Flexible ? 2 : 0, s_parts.FittingFor(pipe, FittingKind.Coupling)!.Clamps);
            Assert.Equal(pipe.Flexible ? 1 : 0, s_parts.FittingFor(pipe, FittingKind.Cap)!.Clamps);
        }
    }

    [Fact]
    public void Losses_in_the_rows_follow_from_their_bores()
    {
        foreach (var pipe in s_parts.Pipes.Values)
        {
            foreach (
                var (kind, through) in new[]
                {
                    (FittingKind.Elbow90, 30.0),
                    (FittingKind.Elbow45, 16.0),
                    (FittingKind.Tee, 20.0),
                    (FittingKind.Valve, 3.0),
                    (FittingKind.CheckValve, 100.0),
                }
            )
            {
                var fitting = s_parts.FittingFor(pipe, kind)!;
                Assert.Equal(1, fitting.LossThrough / Loss(pipe, fitting, through), 0.006);
            }
            var tee = s_parts.FittingFor(pipe, FittingKind.Tee)!;
            Assert.Equal(1, tee.LossBranch / Loss(pipe, tee, 60), 0.006);
        }

        // Rows are printed to three digits, hence half a percent. The equations are those of the page on fitting losses.
        static double Loss(PipeSize pipe, FittingType fitting, double multiple)
        {
            if (!pipe.Flexible)
            {
                return multiple * TurbulentFriction(pipe.InsideDiameter);
            }
            var area = Math.Pow(fitting.Bore / pipe.InsideDiameter, 2);
            var narrowing = 0.5 * (1 - area);
            var widening = (1 - area) * (1 - area);
            return (narrowing + (multiple * TurbulentFriction(fitting.Bore)) + widening) / (area * area);
        }

        // Clean commercial steel of 0.0018 in.
        static double TurbulentFriction(double bore) => 0.25 / Math.Pow(Math.Log10(0.0018 * 0.0254 / (3.7 * bore)), 2);
    }

    [Fact]
    public void Barbs_narrow_the_hose_and_cost_more_than_open_pipe()
    {
        foreach (var fitting in s_parts.Fittings.Values.Where(fitting => fitting.Bore > 0))
        {
            var hose = s_parts.Pipes.Values.Single(pipe =>
                pipe.Family == fitting.Family && pipe.Nominal == fitting.Nominal
            );
            Assert.InRange(fitting.Bore / hose.InsideDiameter, 0.7, 0.9);
            Assert.True(fitting.LossThrough > 0.2, fitting.Key);
        }
    }

    [Fact]
    public void Tanks_hold_what_their_names_say_within_three_percent()
    {
        foreach (var tank in s_parts.Tanks.Values)
        {
            Assert.Equal(1, tank.Volume / Named(tank.Key), 0.03);
        }
    }

    [Fact]
    public void Pots_hold_what_their_names_say_and_are_drawn_in_to_the_base()
    {
        foreach (var pot in s_parts.Pots.Values)
        {
            Assert.Equal(1, pot.Volume / Named(pot.Key), 0.001);
            Assert.InRange(pot.BaseRatio, 0.7, 0.95);
            Assert.Equal(pot.Volume, pot.VolumeBelow(pot.Height), pot.Volume * 1e-12);
            // Common practice: 1.5 to 2 in (4 to 5 cm) of standing water.
            Assert.InRange(pot.DrainHeight, 0.038, 0.051);
        }
    }

    [Fact]
    public void Assumed_pots_fit_their_assumed_spacing()
    {
        Assert.True(s_parts.Pots["pot-square-3-gal"].Length <= 10.5 * 0.0254);
        Assert.True(s_parts.Pots["pot-square-11-l"].Length <= 0.27);
    }

    [Fact]
    public void The_assumed_tanks_let_a_drain_fall_in_under_a_stand_of_two_feet()
    {
        Assert.True(s_parts.Tanks["tank-box-35-gal"].Height <= 16 * 0.0254);
        Assert.True(s_parts.Tanks["tank-box-130-l"].Height <= 0.40);
    }

    [Fact]
    public void No_pump_gives_more_than_half_of_its_electric_power_to_the_water()
    {
        foreach (var pump in s_parts.Pumps.Values)
        {
            var best = pump.Curve.Max(point => 998.2 * 9.80665 * point.Flow * point.Head);
            Assert.InRange(best / pump.Power, 0.02, 0.5);
        }
    }

    [Fact]
    public void Only_the_boosters_open_a_compensating_emitter()
    {
        var opening = s_parts.Emitters["drip-pc-1gph"].MinPressure;
        foreach (var pump in s_parts.Pumps.Values)
        {
            var shutOff = 998.2 * 9.80665 * pump.Curve[0].Head;
            Assert.Equal(pump.Key.Contains("booster", StringComparison.Ordinal), shutOff > 1.5 * opening);
        }
    }

    [Fact]
    public void Pieces_of_emitters_and_outlets_stand_in_the_catalogue()
    {
        var pieces = s_parts
            .Emitters.Values.SelectMany(emitter => emitter.Pieces)
            .Concat(s_parts.Outlets.Values.SelectMany(outlet => outlet.Pieces));
        Assert.All(pieces, key => Assert.True(s_parts.Sundries.ContainsKey(key), key));
    }

    [Fact]
    public void Every_hole_of_an_outlet_has_its_saw_and_fits_into_a_drain_pipe()
    {
        foreach (var outlet in s_parts.Outlets.Values)
        {
            foreach (var hole in new[] { outlet.PotHole, outlet.PipeHole })
            {
                Assert.Equal(hole, s_parts.SundryFor(SundryUse.HoleSaw, hole)!.Diameter, 1e-9);
                Assert.True(hole < s_parts.Pipes["pvc40-1-1/2"].InsideDiameter);
                Assert.True(hole < s_parts.Pipes["pvcu-50mm"].InsideDiameter);
            }
        }
    }

    [Fact]
    public void Punch_and_small_pieces_are_found_by_their_size()
    {
        foreach (var emitter in s_parts.Emitters.Values)
        {
            Assert.Equal(emitter.Punch, s_parts.SundryFor(SundryUse.Punch, emitter.Punch)!.Diameter, 1e-4);
        }
        Assert.Equal("microtube-4mm", s_parts.SundryFor(SundryUse.Microtube, 0.004)!.Key);
        Assert.Equal("microtube-0.165in", s_parts.SundryFor(SundryUse.Microtube, 0.165 * 0.0254)!.Key);
        Assert.Equal("inline-valve-1/4", s_parts.SundryFor(SundryUse.InlineValve, 0.165 * 0.0254)!.Key);
        foreach (var hose in s_parts.Pipes.Values.Where(pipe => pipe.Flexible))
        {
            Assert.Same(s_parts.ClampFor(hose), s_parts.SundryFor(SundryUse.Clamp, hose.OutsideDiameter));
        }
    }

    [Fact]
    public void An_outlet_is_screened_and_sealed_in_pot_and_pipe()
    {
        foreach (var outlet in s_parts.Outlets.Values)
        {
            Assert.Equal(2, outlet.Pieces.Count(key => key.StartsWith("drain-seal", StringComparison.Ordinal)));
            Assert.Single(outlet.Pieces, key => key.StartsWith("drain-elbow", StringComparison.Ordinal));
            Assert.Single(outlet.Pieces, key => key.StartsWith("drain-screen", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void The_assumed_strainers_are_finer_than_a_fifth_of_the_assumed_emitters_passage()
    {
        Assert.True(
            s_parts.Strainers["strainer-150-mesh"].Opening <= s_parts.Emitters["drip-turbulent-1gph"].Passage / 5
        );
        Assert.True(
            s_parts.Strainers["strainer-100-um"].Opening <= s_parts.Emitters["drip-turbulent-4lph"].Passage / 5
        );
    }

    // "tank-box-35-gal" and "pot-square-11-l" end in number and unit.
    private static double Named(string key)
    {
        var words = key.Split('-');
        var number = double.Parse(words[^2], System.Globalization.CultureInfo.InvariantCulture);
        return number * (words[^1] == "gal" ? 0.003785411784 : 0.001);
    }
}
