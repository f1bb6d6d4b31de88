namespace Dripwright.Engine.Water;

/// <summary>An emitter behind its microtube: the one unknown between them is found here, not in the network.</summary>
internal static class EmitterBranch
{
    /// <summary>Flow through tube and emitter for the head at the junction, and its derivative.</summary>
    /// <param name="law">The emitter.</param>
    /// <param name="tube">The tube, or null.</param>
    /// <param name="multiplier">[-] Flow against the law's.</param>
    /// <param name="head">[m] Head at the junction over the outlet.</param>
    /// <param name="emitterHead">[m] In: a guess of the head at the emitter. Out: that head.</param>
    /// <returns>[m³/s], [m²/s] Flow and its derivative by the junction's head.</returns>
    public static (double Flow, double Slope) At(
        EmitterLaw law,
        PipeLaw? tube,
        double multiplier,
        double head,
        ref double emitterHead
    )
    {
        if (head <= 0 || multiplier == 0)
        {
            emitterHead = Math.Max(0, head);
            return (0, 0);
        }

        if (tube is null)
        {
            emitterHead = head;
            var (flow, slope) = law.At(head);
            return (multiplier * flow, multiplier * slope);
        }

        // g(y) = y + tube(q(y)) - head rises with slope of at least 1 from g(0) < 0 to g(head) >= 0: Newton, kept inside
        // the bracket by halving, cannot fail. Around a kink (an emitter's opening, the pipe's change to turbulence) its
        // steps may swing to and fro with hardly a gain: a bracket that four steps have not halved is halved by hand.
        var (low, high) = (0.0, head);
        var widthBefore = head;
        var y = emitterHead > 0 && emitterHead < head ? emitterHead : 0.5 * head;
        for (var step = 0; ; step++)
        {
            var (flow, slope) = law.At(y);
            flow *= multiplier;
            slope *= multiplier;
            var loss = tube.At(flow);
            var stretch = 1 + loss.Slope * slope;
            var error = y + loss.Head - head;
            (low, high) = error > 0 ? (low, y) : (y, high);
            var next = y - error / stretch;
            // 4e-16 of the value is rounding; 200 halvings exhaust any double.
            if (Math.Abs(next - y) <= 4e-16 * y || step == 200)
            {
                emitterHead = y;
                return (flow, slope / stretch);
            }

            var stuck = false;
            if (step % 4 == 3)
            {
                stuck = high - low > 0.5 * widthBefore;
                widthBefore = high - low;
            }

            if (stuck || !(next > low && next < high))
            {
                next = 0.5 * (low + high);
                if (next == low || next == high)
                {
                    emitterHead = y;
                    return (flow, slope / stretch);
                }
            }

            y = next;
        }
    }
}
