using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Printed;

/// <summary>Where the emitters' stakes can be held on the pots' rims.</summary>
internal static class StakeHolders
{
    /// <summary>[-] Share of a pot's length over which its stakes are spread. Common practice.</summary>
    private const double Spread = 0.6;

    public static SmallUse Of(Rig rig, RigLayout layout, PrintParameters start)
    {
        if (rig.Feed.MicrotubeLength <= 0)
        {
            return SmallUse.None(
                "stakeHolders",
                Phrase.Of("print.found.emitters"),
                Phrase.Of("print.limit.tube"),
                Phrase.Of("print.remedy.no-stakes")
            );
        }

        PrintedSpot[] spots = [.. layout.Rows.SelectMany(row => row.Pots.SelectMany(pot => Spots(row, pot)))];
        return spots.Length > 0
            ? new([new(start, spots.Length, Phrase.Of("print.use.stake"), spots)], null)
            : SmallUse.None(
                "stakeHolders",
                Phrase.Of("print.found.no-plant"),
                Phrase.Of("print.limit.plant"),
                Phrase.Of("print.remedy.plant")
            );
    }

    /// <summary>Side by side along the pot's front.</summary>
    private static IEnumerable<PrintedSpot> Spots(RowLayout row, PotPlace pot)
    {
        var count = pot.Planted ? pot.Emitters : 0;
        for (var i = 0; i < count; i++)
        {
            var x = (((i + 0.5) / count) - 0.5) * Spread * row.Pot.Length;
            var radius = row.Pot.Length / 2;
            var front = row.Pot.Round ? Math.Sqrt((radius * radius) - (x * x)) : row.Pot.Width / 2;
            yield return new(row.Number, new(pot.Base.X + x, pot.Base.Y - front, pot.Base.Z + row.Pot.Height));
        }
    }
}
