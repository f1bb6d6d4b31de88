namespace Dripwright.Engine.Water;

/// <summary>Flow of an emitter against the head at its inlet: q = k hˣ, with a compensating range if it has one.</summary>
/// <remarks>
/// Plain: q = k hˣ for h &gt; 0. Compensating: from the opening head upward q = q_ref (h/h_ref)ˣ with a small x; below it
/// q falls as √h from the value at the opening head, for the open labyrinth then acts as an orifice. Nothing flows, in or
/// out, at h ≤ 0. Within the lowest millimetre of head the power law, whose slope is infinite at zero, is replaced by a
/// cubic that meets it in value and slope: at such heads capillarity rules and no law is known.
/// Source: the power law is common practice of the trade and of emitter makers; so is the branch below opening. Method page: docs/methods/feed-network.md
/// </remarks>
public sealed record EmitterLaw
{
    /// <summary>[m] Head under which the power law gives way to a cubic.</summary>
    internal const double LowestLawHead = 1e-3;

    private readonly double _coefficient;
    private readonly double _lowCoefficient;

    private EmitterLaw(double coefficient, double exponent, double openingHead, double highestHead)
    {
        _coefficient = coefficient;
        Exponent = exponent;
        OpeningHead = openingHead;
        HighestHead = highestHead;
        _lowCoefficient = openingHead > 0 ? coefficient * Math.Pow(openingHead, exponent) / Math.Sqrt(openingHead) : 0;
    }

    /// <summary>[m³/s per m^x] Coefficient k of the law in its working range.</summary>
    public double Coefficient => _coefficient;

    /// <summary>[-] Exponent x of the law in its working range.</summary>
    public double Exponent { get; }

    /// <summary>[m] Head at which compensation begins; 0 for a plain emitter.</summary>
    public double OpeningHead { get; }

    /// <summary>[m] Head up to which the maker vouches for the law; infinite if not stated.</summary>
    public double HighestHead { get; }

    /// <summary>A plain emitter q = k hˣ.</summary>
    /// <remarks>x is about 0.5 for turbulent paths and orifices, 0.7 to 1 for long laminar paths.</remarks>
    /// <param name="coefficient">[m³/s per m^x] k, greater than 0.</param>
    /// <param name="exponent">[-] x, from 0.01 to 1.</param>
    /// <returns>The law.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static EmitterLaw Plain(double coefficient, double exponent)
    {
        Guard.Positive(coefficient);
        Guard.Between(exponent, 0.01, 1);
        return new EmitterLaw(coefficient, exponent, 0, double.PositiveInfinity);
    }

    /// <summary>A plain emitter from the flow on its label.</summary>
    /// <remarks>k = q / hˣ.</remarks>
    /// <param name="flow">[m³/s] Flow at the rated head, greater than 0.</param>
    /// <param name="head">[m] Rated head, greater than 0.</param>
    /// <param name="exponent">[-] x, from 0.01 to 1.</param>
    /// <returns>The law.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static EmitterLaw FromRating(double flow, double head, double exponent)
    {
        Guard.Positive(flow);
        Guard.Positive(head);
        Guard.Between(exponent, 0.01, 1);
        return Plain(flow / Math.Pow(head, exponent), exponent);
    }

    /// <summary>A pressure-compensating emitter.</summary>
    /// <remarks>q = q_ref (h/h_ref)ˣ from the opening head upward, joined below by a square-root law.</remarks>
    /// <param name="nominalFlow">[m³/s] Flow at the reference head, greater than 0.</param>
    /// <param name="referenceHead">[m] Head at which the nominal flow is stated, not under the opening head.</param>
    /// <param name="exponent">[-] Remaining x in the compensating range, from 0.01 to 0.5.</param>
    /// <param name="openingHead">[m] Head from which it compensates, at least 0.01.</param>
    /// <param name="highestHead">[m] Head up to which the maker vouches for it, above the opening head.</param>
    /// <returns>The law.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static EmitterLaw PressureCompensating(
        double nominalFlow,
        double referenceHead,
        double exponent,
        double openingHead,
        double highestHead
    )
    {
        Guard.Positive(nominalFlow);
        Guard.Between(openingHead, 0.01, double.MaxValue);
        Guard.Between(referenceHead, openingHead, double.MaxValue);
        Guard.Between(exponent, 0.01, 0.5);
        if (!(highestHead > openingHead))
        {
            throw new ArgumentOutOfRangeException(nameof(highestHead), highestHead, "Must exceed the opening head.");
        }

        return new EmitterLaw(nominalFlow / Math.Pow(referenceHead, exponent), exponent, openingHead, highestHead);
    }

    /// <summary>Flow at a head.</summary>
    /// <remarks>See the type. Zero at and below zero head.</remarks>
    /// <param name="head">[m] Head at the emitter's inlet above its outlet.</param>
    /// <returns>[m³/s] Flow, never negative.</returns>
    public double Flow(double head) => At(head).Flow;

    /// <summary>Where a head lies in the emitter's range.</summary>
    /// <remarks>Plain emitters are in range at every head above zero.</remarks>
    /// <param name="head">[m] Head at the emitter's inlet above its outlet.</param>
    /// <returns>The range.</returns>
    public EmitterRange RangeAt(double head) =>
        head <= 0 ? EmitterRange.NoFlow
        : head < OpeningHead ? EmitterRange.BelowOpening
        : head <= HighestHead ? EmitterRange.Working
        : EmitterRange.AboveHighest;

    /// <summary>[m³/s], [m²/s] Flow and its derivative by head.</summary>
    internal (double Flow, double Slope) At(double head)
    {
        if (head <= 0)
        {
            return (0, 0);
        }

        var low = head < OpeningHead;
        var k = low ? _lowCoefficient : _coefficient;
        var x = low ? 0.5 : Exponent;
        if (head >= LowestLawHead)
        {
            var flow = k * (x == 0.5 ? Math.Sqrt(head) : Math.Pow(head, x));
            return (flow, x * flow / head);
        }

        // a s² + b s³ with value 1 and slope x at s = 1; it rises throughout for 0 < x <= 1.
        var s = head / LowestLawHead;
        var scale = k * Math.Pow(LowestLawHead, x);
        return (scale * s * s * (3 - x + (x - 2) * s), scale * s * (2 * (3 - x) + 3 * (x - 2) * s) / LowestLawHead);
    }
}
