using Dripwright.Engine.Units;

namespace Dripwright.Engine.Rigs;

/// <summary>The few answers from which a starter rig file is made.</summary>
/// <param name="Name">What the rig is called.</param>
/// <param name="Units">Units preferred.</param>
/// <param name="Rows">Rows, 1 to 100.</param>
/// <param name="Pots">Pots in each row; 1 to 5,000 in all rows together.</param>
/// <param name="Spacing">[m] From pot centre to pot centre; null for the assumed one.</param>
/// <param name="Arrangement">Single or staggered.</param>
/// <param name="Crop">The crop in all pots.</param>
/// <param name="Gravity">True for a raised reservoir without a pump.</param>
public sealed record StarterAnswers(
    string Name = "My rig",
    UnitSystem Units = UnitSystem.Us,
    int Rows = 1,
    int Pots = 10,
    double? Spacing = null,
    Arrangement Arrangement = Arrangement.Single,
    string Crop = "tomato",
    bool Gravity = false
);
