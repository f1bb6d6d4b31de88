using Dripwright.Engine.Wires;
using Dripwright.Sheets.Drawing;

namespace Dripwright.Sheets.Views;

/// <summary>Where crop wires stand in a view from the side.</summary>
/// <remarks>
/// A wire hangs far over the pots. Where the sheet has no room for the whole height the drawing is broken between pots and
/// wire, and the wire moves down: the pots keep a scale at which they can be read.
/// </remarks>
/// <param name="Top">[m] Height of the topmost thing below the wires.</param>
/// <param name="Cut">[m] Height left out between that and the wires; 0 where nothing is.</param>
/// <param name="Above">[mm] Room on paper over that thing for wires and their labels; 0 without a wire.</param>
internal sealed record WireBand(double Top, double Cut, double Above)
{
    /// <summary>[mm] Plants and their names over the pots, then the break, then the wire.</summary>
    private const double Least = 26;

    /// <summary>[mm] Supports and label over the wire.</summary>
    private const double Label = 9;

    // Between the crops' names and the wire.
    private const double LowerBreak = 18.5;
    private const double UpperBreak = 20.5;

    /// <summary>Whether something is left out.</summary>
    public bool Broken => Cut > 1e-9;

    /// <summary>The band of some wires.</summary>
    /// <param name="wires">The wires that the view shows.</param>
    /// <param name="top">[m] Height of the topmost thing below them.</param>
    /// <param name="scale">Scale of the view.</param>
    /// <param name="spare">[mm] Height on paper that is left over, so that less is left out; 0 or more.</param>
    public static WireBand Of(IReadOnlyList<LoadedWire> wires, double top, Scale scale, double spare = 0)
    {
        if (wires.Count == 0)
        {
            return new(top, 0, 0);
        }

        var (low, high) = (wires.Min(w => w.Place.Z) - top, wires.Max(w => w.Place.Z) - top);
        var sag = wires.Max(w => w.Loaded.Spans.Max(s => s.Sag));
        var cut = Math.Max(0, low - sag - ((Least + Math.Max(0, spare)) * scale.Denominator / 1000));
        return new(top, cut, Math.Max(0, scale.OnPaper(high - cut)) + Label);
    }

    /// <summary>[m] The height at which a height is drawn.</summary>
    /// <param name="z">[m] The true height.</param>
    public double Drawn(double z) => z > Top ? z - Cut : z;

    /// <summary>[mm] Heights of the two break lines on the sheet, the lower one first.</summary>
    public (double Lower, double Upper) Breaks(View view)
    {
        var top = view[0, Top].Y;
        return (top - LowerBreak, top - UpperBreak);
    }
}
