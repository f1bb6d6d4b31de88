namespace Dripwright.Engine.Water;

/// <summary>One emitter, or several alike, on a junction of the feed line.</summary>
/// <remarks>
/// A microtube and an inline valve in series are solved with the emitter itself, so they add no nodes: the head at the
/// junction is shared between the tube and the emitter, q = law(h - tube(q)).
/// </remarks>
/// <param name="Law">Flow against head of the emitter proper.</param>
/// <param name="OutletElevation">[m] Height of the outlet over the network's datum.</param>
/// <param name="Tag">The caller's own number, handed back with the result.</param>
/// <param name="Count">How many alike stand at this junction, at least 1.</param>
/// <param name="Multiplier">[-] Flow against the law's: manufacture, clogging; 0 is closed or blocked.</param>
/// <param name="Branch">Microtube and inline valve (as K on the tube's velocity) before the emitter, or null.</param>
public sealed record Emitter(
    EmitterLaw Law,
    double OutletElevation,
    int Tag = 0,
    int Count = 1,
    double Multiplier = 1,
    Pipe? Branch = null
);
