namespace Dripwright.Engine.Printed;

/// <summary>What the open ring of a drain hanger carries for years.</summary>
/// <param name="Load">[N] The weight of pipe and water that it has to carry.</param>
/// <param name="Carries">[N] What it carries at the load's temperature.</param>
/// <param name="Allowed">[Pa] Lasting stress allowed within the layers at that temperature.</param>
public sealed record HangerStrength(double Load, double Carries, double Allowed)
{
    /// <summary>[-] Greatest support of a beam over several spans beside the weight of one span: 10/8, the middle one of
    /// three, as in any table of beams (AISC beam sheets).</summary>
    public const double LargestShare = 1.25;

    /// <summary>The strength of a ring that is hung at one side of the pipe and carries it at the other.</summary>
    /// <remarks>
    /// Half-way round, the weight P pulls with the lever of the ring's mean radius r: σ = 6 P r/(b t²) + P/(b t), a straight
    /// bar's bending. With t up to a fifth of r a curved bar's inner stress is about a tenth more (from memory); the safety
    /// of <see cref="SocketStrength.Safety"/> covers it. Method page: docs/methods/joint-strength.md.
    /// </remarks>
    /// <param name="parameters">Plastic, load and temperature.</param>
    /// <param name="inside">[m] Radius of the ring's bore, over 0.</param>
    /// <param name="wall">[m] Thickness t of the ring, over 0.</param>
    /// <param name="along">[m] Length b along the pipe, over 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A length is not over 0.</exception>
    public static HangerStrength Of(PrintParameters parameters, double inside, double wall, double along)
    {
        ArgumentNullException.ThrowIfNull(parameters);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(inside);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(wall);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(along);
        var plastic = parameters.Plastic;
        var share = SocketStrength.HeatShare(plastic, parameters.Load.Temperature);
        var allowed = plastic.AlongLayers * share * SocketStrength.LastingShare / SocketStrength.Safety;
        var perNewton = (6 * (inside + (wall / 2)) / (along * wall * wall)) + (1 / (along * wall));
        return new(parameters.HangerLoad, allowed / perNewton, allowed);
    }
}
