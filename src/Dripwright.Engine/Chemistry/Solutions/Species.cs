namespace Dripwright.Engine.Chemistry.Solutions;

/// <summary>One ion or molecule of a solution, and how much of it there is.</summary>
/// <param name="Formula">Formula without its charge, such as <c>HPO4</c>.</param>
/// <param name="Charge">[-] Charge number.</param>
/// <param name="Concentration">[mol/m³] Concentration.</param>
/// <param name="Activity">[-] Activity on the scale of mol/L.</param>
public readonly record struct Species(string Formula, int Charge, double Concentration, double Activity);
