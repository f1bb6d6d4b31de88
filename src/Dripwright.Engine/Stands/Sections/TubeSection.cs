using Dripwright.Engine.Catalogue;

namespace Dripwright.Engine.Stands.Sections;

/// <summary>Cross-section of a tube, from the catalogue or as the grower measured it.</summary>
/// <remarks>
/// Round: A = π/4 (D² − d²), I = π/64 (D⁴ − d⁴), S = 2I/D, J = 2I. Rectangular with sharp corners: A = BH − bh,
/// I = (BH³ − bh³)/12, S = 2I/H, J = 4·Am²·t/s after Bredt with Am and s of the wall's middle line. Real rectangular tube
/// has round corners and a few per cent less of A and I (from memory). Shear area: round tube after Cowper, J. Appl. Mech.
/// 33, 1966 (from memory), rectangular tube its two webs.
/// Method page: docs/methods/stand-frame.md
/// </remarks>
public sealed record TubeSection
{
    private const double Poisson = 0.3;

    private TubeSection(bool round, double width, double height, double wall)
    {
        Round = round;
        Width = Guard.Positive(width);
        Height = Guard.Positive(height);
        Wall = Guard.Positive(wall);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(wall, Math.Min(width, height) / 2);
        Properties = round ? OfRound(width, wall) : OfRectangle(width, height, wall);
    }

    /// <summary>True for round tube.</summary>
    public bool Round { get; }

    /// <summary>[m] Outside diameter, or outside measure along local y.</summary>
    public double Width { get; }

    /// <summary>[m] Outside diameter, or outside measure along local z: upright in a level member.</summary>
    public double Height { get; }

    /// <summary>[m] Wall.</summary>
    public double Wall { get; }

    /// <summary>Its section properties.</summary>
    public SectionProperties Properties { get; }

    /// <summary>A round tube.</summary>
    /// <param name="outside">[m] Outside diameter, more than 0.</param>
    /// <param name="wall">[m] Wall, more than 0, at most half the diameter.</param>
    /// <exception cref="ArgumentOutOfRangeException">A measure lies outside its range.</exception>
    public static TubeSection OfRoundTube(double outside, double wall) => new(true, outside, outside, wall);

    /// <summary>A rectangular tube.</summary>
    /// <param name="width">[m] Outside measure along local y, more than 0.</param>
    /// <param name="height">[m] Outside measure along local z, more than 0: upright in a level member.</param>
    /// <param name="wall">[m] Wall, more than 0, at most half the smaller measure.</param>
    /// <exception cref="ArgumentOutOfRangeException">A measure lies outside its range.</exception>
    public static TubeSection OfRectangularTube(double width, double height, double wall) =>
        new(false, width, height, wall);

    /// <summary>A tube of the catalogue.</summary>
    /// <param name="tube">Its size.</param>
    public static TubeSection Of(TubeSize tube)
    {
        ArgumentNullException.ThrowIfNull(tube);
        return new TubeSection(tube.Shape == TubeShape.Round, tube.Outside, tube.Outside, tube.Wall);
    }

    /// <summary>The same tube after rust or wear took part of its wall from the outside.</summary>
    /// <remarks>Loss from outside costs more stiffness than the same loss from inside, so it is taken to be outside.</remarks>
    /// <param name="wallLoss">[-] Share of the wall that is gone, 0 to 0.9.</param>
    /// <exception cref="ArgumentOutOfRangeException">The share lies outside its range.</exception>
    public TubeSection Worn(double wallLoss)
    {
        Guard.Between(wallLoss, 0, 0.9);
        var off = wallLoss * Wall;
        return new TubeSection(Round, Width - (2 * off), Height - (2 * off), Wall - off);
    }

    private static SectionProperties OfRound(double outside, double wall)
    {
        var inside = outside - (2 * wall);
        var area = Math.PI / 4 * ((outside * outside) - (inside * inside));
        var inertia = Math.PI / 64 * (Math.Pow(outside, 4) - Math.Pow(inside, 4));
        var m2 = inside * inside / (outside * outside);
        var square = (1 + m2) * (1 + m2);
        var share = 6 * (1 + Poisson) * square / (((7 + (6 * Poisson)) * square) + ((20 + (12 * Poisson)) * m2));
        var modulus = 2 * inertia / outside;
        return new(area, inertia, inertia, modulus, modulus, 2 * inertia, share * area, share * area, true);
    }

    private static SectionProperties OfRectangle(double width, double height, double wall)
    {
        var b = width - (2 * wall);
        var h = height - (2 * wall);
        double about(double across, double along, double hollowAcross, double hollowAlong) =>
            ((across * Math.Pow(along, 3)) - (hollowAcross * Math.Pow(hollowAlong, 3))) / 12;
        var inertiaY = about(width, height, b, h);
        var inertiaZ = about(height, width, h, b);
        var middle = (width - wall) * (height - wall);
        var around = 2 * (width + height - (2 * wall));
        return new(
            (width * height) - (b * h),
            inertiaY,
            inertiaZ,
            2 * inertiaY / height,
            2 * inertiaZ / width,
            4 * middle * middle * wall / around,
            2 * width * wall,
            2 * height * wall,
            false
        );
    }
}
