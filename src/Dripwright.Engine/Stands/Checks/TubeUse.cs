namespace Dripwright.Engine.Stands.Checks;

/// <summary>What uses a tube up most.</summary>
public enum UseKind
{
    /// <summary>Bending with push or pull.</summary>
    Bending,

    /// <summary>Shear and twist.</summary>
    Shear,

    /// <summary>The moment in a printed joint.</summary>
    JointMoment,

    /// <summary>Pull on a printed joint.</summary>
    PullOut,
}

/// <summary>How far one tube and its two joints are used up in one combination; 1 is the limit.</summary>
/// <param name="Tube">Index of the tube in the frame.</param>
/// <param name="Bending">[-] Bending with push or pull.</param>
/// <param name="Shear">[-] Shear and twist.</param>
/// <param name="JointMoment">[-] Moment in its joints over their slip moment.</param>
/// <param name="PullOut">[-] Pull on its joints over their pull-out force.</param>
/// <param name="Axial">[N] Axial force of the largest size, tension positive.</param>
/// <param name="Moment">[N·m] Largest bending moment.</param>
/// <param name="Sag">[m] Largest shift off the straight line between its ends.</param>
public sealed record TubeUse(
    int Tube,
    double Bending,
    double Shear,
    double JointMoment,
    double PullOut,
    double Axial,
    double Moment,
    double Sag
)
{
    /// <summary>[-] The largest of the four.</summary>
    public double Utilisation => Math.Max(Math.Max(Bending, Shear), Math.Max(JointMoment, PullOut));

    /// <summary>Which is the largest.</summary>
    public UseKind Kind
    {
        get
        {
            var most = Utilisation;
            return most == Bending ? UseKind.Bending
                : most == JointMoment ? UseKind.JointMoment
                : most == PullOut ? UseKind.PullOut
                : UseKind.Shear;
        }
    }
}
