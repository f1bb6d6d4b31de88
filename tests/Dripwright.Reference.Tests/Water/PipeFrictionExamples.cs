using Dripwright.Engine.Physics;
using Dripwright.Engine.Water;
using MathNet.Numerics;

namespace Dripwright.Reference.Tests.Water;

/// <summary>
/// Worked examples from textbooks, as transcribed in a public collection of textbook companions (the printed books were
/// not seen), and check values from the documentation of a public fluids library. Crane's from its TP-410 notebooks.
/// </summary>
public class PipeFrictionExamples
{
    private const double Foot = 0.3048;
    private const double Inch = 0.0254;
    private const double Gpm = 6.30902e-5;
    private const double Psi = 6894.757;

    [Fact]
    public void Colebrook_gives_the_published_root() =>
        // Clamond, Ind. Eng. Chem. Res. 48, 2009, for Colebrook 1939.
        Assert.Equal(0.018513866077, Friction.Colebrook(1e5, 1e-4), 1e-9);

    [Fact]
    public void The_smooth_pipe_law_of_Prandtl_von_Karman_and_Nikuradse_is_Colebrook_without_roughness() =>
        // 2 log10(Re √f) - 0.8 has the rounded constant 0.8 for log10(2.51)·2 = 0.7993, worth 0.02 %.
        Assert.Equal(0.00810267, Friction.Colebrook(1e7, 0), 0.0003 * 0.0081);

    [Fact]
    public void Laminar_factor_is_64_over_Re() => Assert.Equal(0.5, Friction.DarcyFactor(128, 0), 1e-15);

    // Worked values of three rival formulas at Re 1e5 and a roughness of 1e-4 (a public fluids library, which names their sources);
    // they part from Colebrook by up to 1.5 %.
    [Theory]
    [InlineData(0.018452)]
    [InlineData(0.01826505)]
    [InlineData(0.01846262)]
    public void The_friction_factor_is_near_the_published_values_of_rival_formulas(double published) =>
        Assert.Equal(published, Friction.DarcyFactor(1e5, 1e-4), 0.015 * published);

    [Theory]
    [InlineData(0)]
    [InlineData(1e-5)]
    [InlineData(1e-4)]
    [InlineData(1e-3)]
    public void The_rival_formulas_stay_within_three_percent_of_ours(double roughness)
    {
        for (var re = 5e3; re <= 1e6; re *= 1.3)
        {
            var ours = Friction.DarcyFactor(re, roughness);
            Assert.Equal(ours, PublishedFormulas.SwameeJain(re, roughness), 0.03 * ours);
            Assert.Equal(ours, PublishedFormulas.Haaland(re, roughness), 0.03 * ours);
            Assert.Equal(ours, PublishedFormulas.Churchill(re, roughness), 0.03 * ours);
        }
    }

    [Fact]
    public void Smooth_plastic_pipe_of_Crane_example_7_1()
    {
        // Crane TP-410 (metric), ex. 7-1: water at 30 °C, ID 52.5 mm, 200 L/min: Re 100 600, f 0.0179. 1 %.
        var law = new PipeLaw(new Pipe(20, 0.0525, 0), WaterProperties.KinematicViscosity(30));
        var re = law.Reynolds(0.2 / 60);
        Assert.Equal(100_600, re, 1006.0);
        Assert.Equal(0.0179, Friction.DarcyFactor(re, 0), 0.000179);
    }

    [Fact]
    public void Oil_in_a_small_pipe_of_Munson_example_8_2()
    {
        // Munson, Young & Okiishi, Fundamentals of Fluid Mechanics, ex. 8.2: 20.4 kPa over 10 m; level pressure at -13.34°.
        var law = new PipeLaw(new Pipe(10, 0.020, 0), 0.40 / 900);
        var drop = law.At(2.0e-5).Head;
        Assert.Equal(20.4e3, drop * 900 * StandardGravity.Value, 0.005 * 20.4e3);
        Assert.Equal(-13.34, -Math.Asin(drop / 10) * 180 / Math.PI, 0.0667);
    }

    [Fact]
    public void Water_in_a_three_millimetre_tube_of_Cengel_example_8_2()
    {
        // Cengel & Cimbala, Fluid Mechanics, ex. 8-2: h 4.46 m, 43.7 kPa, 0.28 W. Power printed to two digits.
        var pipe = new Pipe(9, 0.003, 0);
        var flow = 0.9 * pipe.Area;
        var h = new PipeLaw(pipe, 1.519e-3 / 1000).At(flow).Head;
        Assert.Equal(4.46, h, 0.005 * 4.46);
        Assert.Equal(43.7e3, h * 1000 * StandardGravity.Value, 0.005 * 43.7e3);
        Assert.Equal(0.28, h * 1000 * StandardGravity.Value * flow, 0.005);
    }

    [Fact]
    public void Friction_with_local_losses_of_Cengel_example_8_8()
    {
        // Cengel & Cimbala, ex. 8-8: f 0.0315; surface of the upper reservoir at 31.8 m above the lower's 4 m datum.
        var pipe = new Pipe(89, 0.050, 0.00026, 0.5 + 2 * 0.3 + 0.2 + 1.06);
        var law = new PipeLaw(pipe, 1.307e-3 / 999.7);
        Assert.Equal(0.0315, Friction.DarcyFactor(law.Reynolds(0.006), 0.00026 / 0.050), 0.005 * 0.0315);
        Assert.Equal(31.8, 4 + law.At(0.006).Head, 0.005 * 31.8);
    }

    [Fact]
    public void House_riser_with_fittings_of_Munson_example_8_8()
    {
        // Munson et al., ex. 8.8: p1 = 10.7 psi without losses, 21.3 with friction, 30.5 with all losses; 60 ft of copper
        // pipe D 0.0625 ft, rise 20 ft, faucet jet 0.5 in. US units of the book: rho 1.94 slug/ft3, mu 2.34e-5 lb s/ft2.
        const double Density = 1.94 * 515.379;
        const double Flow = 0.0267 * Foot * Foot * Foot;
        var nu = 2.34e-5 / 1.94 * Foot * Foot;
        var bare = new Pipe(60 * Foot, 0.0625 * Foot, 5e-6 * Foot);
        var jet = Math.Pow(Flow / (Math.PI / 4 * Math.Pow(0.5 / 12 * Foot, 2)), 2);
        var inPipe = Math.Pow(bare.Velocity(Flow), 2);
        var lifting = 20 * Foot + (jet - inPipe) / (2 * StandardGravity.Value);
        double Pressure(double head) => head * Density * StandardGravity.Value / Psi;

        Assert.Equal(45_000, new PipeLaw(bare, nu).Reynolds(Flow), 0.005 * 45_000);
        Assert.Equal(10.7, Pressure(lifting), 0.055);
        Assert.Equal(21.3, Pressure(lifting + new PipeLaw(bare, nu).At(Flow).Head), 0.005 * 21.3);
        var fitted = bare with { LossCoefficient = 4 * 1.5 + 10 + 2 };
        Assert.Equal(30.5, Pressure(lifting + new PipeLaw(fitted, nu).At(Flow).Head), 0.005 * 30.5);
    }

    [Fact]
    public void Long_smooth_pipe_of_Vennard_example_9_6()
    {
        // Vennard, Elementary Fluid Mechanics, ex. 9.6: 90 gpm, 3 in, 3000 ft at 68 °F: f 0.018, h 56.0 ft. 1.5 %.
        var law = new PipeLaw(new Pipe(3000 * Foot, 0.0762, 0), 2.1e-5 / 1.935 * Foot * Foot);
        Assert.Equal(0.018, Friction.DarcyFactor(law.Reynolds(90 * Gpm), 0), 0.015 * 0.018);
        Assert.Equal(56.0, law.At(90 * Gpm).Head / Foot, 0.015 * 56);
    }

    [Fact]
    public void Tank_emptying_through_a_pipe_of_Schaschke_example_8_13()
    {
        // Schaschke, Fluid Mechanics: Worked Examples for Engineers, 8.13: 11 190 s. A constant Fanning factor is given, so
        // this checks the local-loss arithmetic: (4 f L/d + 2.5) acts as one K.
        var k = 4 * 0.005 * 20 / 0.025 + 2.5;
        double Velocity(double head) => Math.Sqrt(head / LocalLoss.Head(k, 1));
        var area = Math.PI / 4 * 0.025 * 0.025;
        // t = ∫ A dH / (a V): with V ∝ √H this is 2 (A/a) (√H1 - √H2) / V(1).
        var seconds = 2 * (4 / area) * (Math.Sqrt(2.0) - Math.Sqrt(0.5)) / Velocity(1);
        Assert.Equal(11_190, seconds, 0.001 * 11_190);
    }

    [Fact]
    public void Blasius_for_a_polyethylene_lateral_stands_within_its_measured_band()
    {
        // Keller & Bliesner (from memory): J [m/100 m] = 7.89e7 Q^1.75 / D^4.75, L/s and mm; 200 L/h in 13.6 mm at 20 °C.
        var law = new PipeLaw(new Pipe(100, 0.0136, 0), WaterProperties.KinematicViscosity(20));
        var published = 7.89e7 * Math.Pow(200 / 3600.0, 1.75) / Math.Pow(13.6, 4.75);
        Assert.Equal(published, law.At(200e-3 / 3600).Head, 0.025 * published);
    }

    [Fact]
    public void Reservoir_emptying_through_two_sizes_in_series_of_Crane_example_7_19()
    {
        // Crane TP-410, ex. 7-19 (notebook of a public fluids library): 11.5 ft of water at 60 °F, sharp entrance, mitre bend
        // (60 fT) and gate (8 fT) with 10 ft of 3 in Schedule 40, sudden contraction, 20 ft of 2 in, exit; e 0.0018 in,
        // fT 0.0173: 137 gpm. The book's area ratios are nominal, ours actual: 2.5 %.
        const double Rough = 0.0018 * Inch;
        var wide = new Pipe(10 * Foot, 3.068 * Inch, Rough, LocalLoss.SharpEntrance + (60 + 8) * 0.0173);
        var narrow = new Pipe(
            20 * Foot,
            2.067 * Inch,
            Rough,
            LocalLoss.SuddenContraction(2.067, 3.068) + LocalLoss.Exit
        );
        var nu = WaterProperties.KinematicViscosity((60 - 32) / 1.8);
        double Missing(double gpm) =>
            new PipeLaw(wide, nu).At(gpm * Gpm).Head + new PipeLaw(narrow, nu).At(gpm * Gpm).Head - 11.5 * Foot;

        Assert.Equal(137, FindRoots.OfFunction(Missing, 50, 300), 0.025 * 137);
    }

    [Fact]
    public void Smooth_pipe_lies_within_the_band_measured_in_small_polyethylene_lines()
    {
        // BIOENG (UNESP), article 19, abstract: pipes of 10.0 to 19.7 mm, Re 6000 to 72 000, 20 °C: best fit
        // f = 0.300/Re^0.25; Blasius' 0.316 lies 5.1 % over the measurements. A smooth pipe of ours may lie as far over
        // the fit as Blasius does, to the next whole percent, and 1 % under.
        for (var re = 6000.0; re <= 72_000; re *= 1.2)
        {
            Assert.InRange(Friction.DarcyFactor(re, 0) / (0.300 / Math.Pow(re, 0.25)), 0.99, 1.06);
        }
    }

    // Tables made with Hazen and Williams' formula and C 150. From a Reynolds number of 30 000 to 100 000 it meets Darcy's law for
    // smooth pipe, under it it says too little: ours is held against them in both. Feet per 100 ft: Illinois Administrative
    // Code, Title 77, Part 906, App. A, Exhibit I, Schedule 40 plastic. Psi per 100 ft over 0.4335: a university irrigation
    // course's "Friction loss for PVC class 160 pipe", and Schedule 40 charts as pipe makers print them (from memory).
    [Theory]
    [InlineData(10, 1.049, 5.50)]
    [InlineData(20, 1.380, 5.23)]
    [InlineData(20, 1.610, 2.46)]
    [InlineData(20, 2.067, 0.74)]
    [InlineData(30, 2.067, 1.54)]
    [InlineData(50, 2.067, 3.98)]
    [InlineData(8, 0.720, 9.78 / 0.4335)]
    [InlineData(20, 1.195, 4.59 / 0.4335)]
    [InlineData(40, 1.195, 16.59 / 0.4335)]
    [InlineData(6, 0.622, 11.86 / 0.4335)]
    public void Smooth_pipe_loses_what_tables_say_where_their_formula_holds(
        double gpm,
        double inches,
        double published
    ) => Assert.Equal(1, SmoothFeetPer100(gpm, inches) / published, 0.051);

    [Theory]
    [InlineData(2, 1.049, 0.28)]
    [InlineData(4, 1.049, 1.01)]
    [InlineData(5, 1.380, 0.39)]
    [InlineData(5, 1.610, 0.18)]
    [InlineData(2, 0.720, 0.75 / 0.4335)]
    [InlineData(4, 1.195, 0.232 / 0.4335)]
    [InlineData(1, 0.622, 0.43 / 0.4335)]
    [InlineData(2, 0.824, 0.39 / 0.4335)]
    public void Slow_flow_in_smooth_pipe_loses_an_eighth_to_a_third_more_than_tables_say(
        double gpm,
        double inches,
        double published
    ) => Assert.InRange(SmoothFeetPer100(gpm, inches) / published, 1.125, 1.33);

    [Fact]
    public void Darcy_exceeds_Hazen_Williams_C_150_at_low_Reynolds_and_meets_it_at_high()
    {
        // Why Darcy is the engine: 1/2 in Schedule 40 at 1 gpm, 0.99 against 1.25 ft/100 ft (recomputed, no print).
        Assert.Equal(1.25, SmoothFeetPer100(1, 0.622), 0.02);
        var published = 3.98;
        Assert.Equal(published, SmoothFeetPer100(50, 2.067), 0.08 * published);
    }

    private static double SmoothFeetPer100(double gpm, double inches) =>
        new PipeLaw(new Pipe(100, inches * Inch, 0), WaterProperties.KinematicViscosity(20)).At(gpm * Gpm).Head;
}
