namespace Dripwright.Engine.Stands.Loads;

/// <summary>Loads that a rig's measures do not tell, each with where it is from; all can be changed.</summary>
public sealed record LoadValues
{
    /// <summary>[kg/m³] Wet substrate for strength: <see cref="WetSubstrate.Soaked"/>.</summary>
    public double Soaked { get; init; } = WetSubstrate.Soaked;

    /// <summary>[kg/m³] Substrate for tipping: <see cref="WetSubstrate.Light"/>.</summary>
    public double Light { get; init; } = WetSubstrate.Light;

    /// <summary>
    /// [kg] Vine and fruit of one plant that rest on the stand. A fully loaded plant weighs 7 to 14 kg (North Carolina State
    /// extension, greenhouse vegetables); what the crop wire carries does not rest here, so the lower end counts: the
    /// part let down on the stand.
    /// </summary>
    public double PlantOnStand { get; init; } = 7;

    /// <summary>[N] Pull of the string on one plant's pot. Common practice: hand-tight, about a kilogram's weight.</summary>
    public double StringPull { get; init; } = 10;

    /// <summary>[rad] Slant of the strings against the plumb line, 15°. Common practice where vines are lowered and leaned.</summary>
    public double StringSlant { get; init; } = 15 * Math.PI / 180;

    /// <summary>[m] Height over the pot's rim at which the string holds the stem. Common practice.</summary>
    public double StringHeight { get; init; } = 0.1;

    /// <summary>[N] A person leaning on a rail, downwards: a hand with a third of the body behind it. Common practice.</summary>
    public double LeanDown { get; init; } = 300;

    /// <summary>[N] The same person, sideways, or pulling past the stand. Common practice.</summary>
    public double LeanSide { get; init; } = 100;

    /// <summary>[-] Out of plumb: sideways share of all weight, 1/200 (EN 1993-1-1, 5.3.2, from memory). It also stands for
    /// the play of a tube of 0.2 mm in a socket 40 mm deep.</summary>
    public double OutOfPlumb { get; init; } = 1.0 / 200;

    /// <summary>[kg] One printed joint. Common practice: 50 g.</summary>
    public double JointMass { get; init; } = 0.05;

    /// <summary>[kg/m³] Wall of pipes and hoses; PVC 1,400, polyethylene less (from memory).</summary>
    public double PipeDensity { get; init; } = 1400;

    /// <summary>Factor of each kind of load, 1 in allowable-strength design: D + F + L (ASCE 7, 2.4.1, from memory).</summary>
    public LoadFactors Factors { get; init; } = new(1, 1, 1, 1);
}

/// <summary>Factors on the kinds of load; the safety lies on the strength's side (1.67 on yield, AISC 360).</summary>
/// <param name="Dead">[-] Tube, joints, pipes, empty pots.</param>
/// <param name="Wet">[-] Substrate and water.</param>
/// <param name="Plants">[-] Plants, fruit and strings.</param>
/// <param name="Person">[-] A person leaning.</param>
public sealed record LoadFactors(double Dead, double Wet, double Plants, double Person);
