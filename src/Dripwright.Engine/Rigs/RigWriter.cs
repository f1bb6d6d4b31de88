using Dripwright.Engine.Files;

namespace Dripwright.Engine.Rigs;

/// <summary>Writes rig files.</summary>
/// <remarks>Reading what was written gives the same rig, bit for bit; writing that again gives the same text.</remarks>
public static class RigWriter
{
    /// <summary>A rig file that gives every value.</summary>
    /// <param name="rig">The rig.</param>
    public static string Write(Rig rig)
    {
        ArgumentNullException.ThrowIfNull(rig);
        return new RecordText(rig.Units, leaveOutAssumed: false, comments: false).Write(rig);
    }

    /// <summary>A rig file that leaves out every value that would be assumed anyway.</summary>
    /// <param name="rig">The rig.</param>
    public static string WriteShort(Rig rig)
    {
        ArgumentNullException.ThrowIfNull(rig);
        return new RecordText(rig.Units, leaveOutAssumed: true, comments: false).Write(rig);
    }
}
