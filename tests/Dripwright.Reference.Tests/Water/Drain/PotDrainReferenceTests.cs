using Dripwright.Engine.Water;

namespace Dripwright.Reference.Tests.Water.Drain;

public class PotDrainReferenceTests
{
    [Fact]
    public void Time_to_drain_a_tank_through_a_long_pipe()
    {
        // Schaschke, Fluid Mechanics: Worked Examples for Engineers, Ex. 8.13 (p. 221), as transcribed in a public
        // textbook-companion collection: tank 4 m², pipe 25 mm by 20 m, Fanning f 0.005, entrance and exit 2.5 velocity
        // heads, 2.0 to 0.5 m: 11 190 s.
        const double resistance = 4 * 0.005 * 20 / 0.025 + 2.5;
        var time = PotOutlet.TimeByOrifice(4, Math.PI * 0.025 * 0.025 / 4, 2, 0.5, 1 / Math.Sqrt(resistance));
        Assert.Equal(11_190, time, 11_190 * 0.001);
    }
}
