using System.Globalization;

namespace Dripwright.Engine.Tests.Curing;

/// <summary>The page docs/cures-proven.md: of how many findings of random rigs a cure is proven.</summary>
internal static class CuresPage
{
    /// <summary>Writes the page beside the committed one; accept it with <c>mv docs/cures-proven.received.md docs/cures-proven.md</c>.</summary>
    public static void Write(int wanted, CureCounts counts) =>
        File.WriteAllText(
            Path.Combine(CommittedText.Root, "docs/cures-proven.received.md"),
            string.Create(
                CultureInfo.InvariantCulture,
                $"""
                # Cures proven on random rigs

                {counts.Planned} of {wanted} random rigs were planned, valid but not sensible ones: pumps too weak, rooms too small, rows too
                long. For every stop and mend a cure was looked for with at most 40 trials. A cure counts when the changed rig, read and
                planned anew in full, no longer has the finding and has no stop that the rig did not have.
                "Its rule proposes" counts findings whose own rule works out a change before anything is tried.

                Written by `DRIPWRIGHT_LONG=1 DRIPWRIGHT_CURE_RIGS=n` and the test `CureCountTests`; how it is done: [methods/cures](methods/cures.md).

                {counts.Table()}
                """
            ) + "\n"
        );
}
