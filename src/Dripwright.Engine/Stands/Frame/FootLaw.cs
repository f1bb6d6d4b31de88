namespace Dripwright.Engine.Stands.Frame;

/// <summary>What a foot does on the floor.</summary>
public enum FootMotion
{
    /// <summary>It stands where it stood.</summary>
    Sticks,

    /// <summary>It slips, with all the friction there is against it.</summary>
    Slips,

    /// <summary>It is off the floor.</summary>
    Lifts,
}

/// <summary>A foot that did not stay where it stood.</summary>
/// <param name="Node">Its node.</param>
/// <param name="Motion">What it does under the whole load.</param>
/// <param name="Shift">[m] How far it is from where it stood.</param>
public readonly record struct FootShift(int Node, FootMotion Motion, Vector3 Shift);

/// <summary>How the floor holds the feet.</summary>
/// <param name="Friction">[-] Level force that it bears over what presses on it; infinite where a foot cannot slip.</param>
/// <param name="Rollers">
/// True for feet that slip freely: the floor holds them together by soft springs, all alike, so that the stand does not
/// roll away as a whole.
/// </param>
internal readonly record struct FootLaw(double Friction, bool Rollers)
{
    /// <summary>[-] Stiffness of a roller's spring over that of the foot's own elements.</summary>
    public const double RollerShare = 0.01;
}

/// <summary>What became of the feet.</summary>
/// <param name="Shifts">[m] Three a foot.</param>
/// <param name="Motions">What each does.</param>
/// <param name="Slip">[-] For a foot that slips, the way of the floor's force against it; three a foot.</param>
/// <param name="Found">False where no rest was found: the shifts are then the motion that nothing stops.</param>
internal sealed record FeetAtRest(double[] Shifts, FootMotion[] Motions, double[] Slip, bool Found)
{
    /// <summary>True where every foot stands where it stood.</summary>
    public bool Still => Found && Array.TrueForAll(Shifts, s => s == 0) && !Motions.Contains(FootMotion.Lifts);
}

/// <summary>A frame whose feet stay where they stand.</summary>
/// <param name="X">Displacements, six rows a node.</param>
/// <param name="Resting">[N] What the floor puts on the feet under the loads that rest on the stand; three a foot.</param>
/// <param name="All">[N] The same under all loads.</param>
internal sealed record FootStanding(double[] X, double[] Resting, double[] All);
