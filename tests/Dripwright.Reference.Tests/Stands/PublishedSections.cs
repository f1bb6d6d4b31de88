using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Stands.Sections;

namespace Dripwright.Reference.Tests.Stands;

/// <summary>Section properties as printed in tube makers' tables, in inches.</summary>
public sealed class PublishedSections
{
    private const double Inch = 0.0254;

    // Round Tubing Properties, table T403, 1998. The last digit printed is the tolerance.
    [Theory]
    [InlineData(1.0, 0.125, 0.344, 0.034, 0.067, 0.313)]
    [InlineData(1.0, 0.250, 0.589, 0.046, 0.092, 0.280)]
    public void Round_tube_as_in_the_round_tubing_table(
        double outside,
        double wall,
        double area,
        double inertia,
        double modulus,
        double gyration
    )
    {
        var p = TubeSection.OfRoundTube(outside * Inch, wall * Inch).Properties;

        Assert.Equal(area, p.Area / Math.Pow(Inch, 2), 0.00051);
        Assert.Equal(inertia, p.InertiaY / Math.Pow(Inch, 4), 0.00051);
        Assert.Equal(modulus, p.ModulusY / Math.Pow(Inch, 3), 0.00051);
        Assert.Equal(gyration, p.GyrationY / Inch, 0.00051);
    }

    // Mechanical and structural tubing, rectangular tables of a tube maker (sharp corners).
    [Theory]
    [InlineData(1.0, 2.0, 0.065, 0.3731, 0.1926, 0.1926, 0.7185, 1.2685)]
    [InlineData(2.0, 1.0, 0.065, 0.3731, 0.0640, 0.1280, 0.4142, 1.2685)]
    [InlineData(1.25, 1.5, 0.065, 0.3406, 0.1116, 0.1488, double.NaN, double.NaN)]
    public void Rectangular_tube_as_in_a_makers_table(
        double width,
        double height,
        double wall,
        double area,
        double inertia,
        double modulus,
        double gyration,
        double poundsPerFoot
    )
    {
        var p = TubeSection.OfRectangularTube(width * Inch, height * Inch, wall * Inch).Properties;

        Assert.Equal(area, p.Area / Math.Pow(Inch, 2), 0.000051);
        Assert.Equal(inertia, p.InertiaY / Math.Pow(Inch, 4), 0.000051);
        // The table rounds twice: its modulus is that of the rounded inertia (0.0640 / 0.5 = 0.1280).
        Assert.Equal(modulus, p.ModulusY / Math.Pow(Inch, 3), 0.00011);
        if (!double.IsNaN(gyration))
        {
            // Its radius is √(0.0640 / 0.3731): half a unit in the inertia's last digit is 0.0002 here.
            Assert.Equal(gyration, p.GyrationY / Inch, 0.0002);
            Assert.Equal(poundsPerFoot, p.Area / Math.Pow(Inch, 2) * 3.4, 0.00011);
        }
    }

    // ANSI C80.3 weights per 100 ft as printed in conduit tables: a range between makers, zinc included.
    [Theory]
    [InlineData("emt-1/2", 28.5, 30)]
    [InlineData("emt-3/4", 43.5, 46)]
    [InlineData("emt-1", 64, 67)]
    public void Conduit_weighs_what_the_conduit_tables_print(string key, double least, double most)
    {
        var tube = PartsCatalogue.Default.Tubes[key];

        var poundsPerFoot = TubeSection.Of(tube).Properties.Area / (Inch * Inch) * 3.4;

        // Zinc and tolerances lie between: half a pound either side.
        Assert.InRange(poundsPerFoot * 100, least - 0.5, most + 0.5);
    }

    // ASTM A513 type 1, minimum strengths as printed in a service centre's sheet: 1008, 1010, 1015, 1020.
    [Theory]
    [InlineData("a513-1008", 30, 42)]
    [InlineData("a513-1010", 32, 45)]
    [InlineData("a513-1015", 35, 48)]
    [InlineData("a513-1020", 38, 52)]
    [InlineData("a500-a-round", 33, 45)]
    [InlineData("a500-b-round", 42, 58)]
    [InlineData("a500-c-round", 46, 62)]
    public void Steels_have_their_published_strength(string key, double yieldKsi, double tensileKsi)
    {
        var steel = Steels.All.Single(s => s.Key == key);

        Assert.Equal(yieldKsi, steel.Yield / 6.894757e6, 1e-5);
        Assert.Equal(tensileKsi, steel.Tensile / 6.894757e6, 1e-5);
    }
}
