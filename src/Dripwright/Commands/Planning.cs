using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;
using Dripwright.Files;
using Dripwright.Language;
using Dripwright.Screen;
using Dripwright.Terminal;

namespace Dripwright.Commands;

/// <summary>A rig file read without a fault.</summary>
/// <param name="Path">Where it was read.</param>
/// <param name="Bytes">The file as it is.</param>
/// <param name="Resolved">The rig.</param>
/// <param name="Assumed">What it did not say.</param>
internal sealed record SoundFile(string Path, byte[] Bytes, ResolvedRig Resolved, IReadOnlyList<Assumed> Assumed)
{
    /// <summary>The rig as it is written.</summary>
    public Rig Rig => Resolved.Rig;
}

/// <summary>From a path to a plan.</summary>
internal static class Planning
{
    /// <summary>Reads a rig file.</summary>
    /// <exception cref="Refusal">It cannot be read or has faults; the message tells all of them.</exception>
    /// <param name="path">Where it is; "-" for standard input.</param>
    /// <param name="catalogue">The parts that it can name.</param>
    /// <param name="around">Where standard input is read, and what else there is to say is told.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <param name="units">Units to show its plan in; null for its own.</param>
    public static SoundFile Read(
        string path,
        PartsCatalogue catalogue,
        Surroundings around,
        CancellationToken stop,
        UnitSystem? units = null
    )
    {
        var bytes = SmallFile.Read(path, around, stop);
        var reading = RigReader.Read(bytes, path, catalogue);
        if (reading.Resolved is not { } rig)
        {
            throw Faults.Refusal(path, reading.Faults);
        }

        foreach (var step in reading.Upgraded.Told())
        {
            around.Error.WriteLine(Plain.Line(Words.Of("program.older-format", path, step)));
        }

        return new SoundFile(path, bytes, units is { } shown ? rig.In(shown) : rig, reading.Assumed);
    }

    /// <summary>Plans a rig in the background, so that Ctrl-C ends the program at once and progress can be shown.</summary>
    public static Task<Plan> Plan(SoundFile file, PlanOptions options, Surroundings around, CancellationToken stop) =>
        LongWork.Run(progress => Planner.Of(file.Resolved, file.Assumed, options, progress), around, stop);
}
