using System.Globalization;

namespace Dripwright.Engine.Parts;

/// <summary>What can be wrong with a <see cref="CutJob"/> before any planning.</summary>
internal static class CutJobCheck
{
    /// <summary>[m] Longer than any stock a row is built from; keeps the whole-number arithmetic far from overflow.</summary>
    private const double LongestLength = 1000;

    /// <summary>Keeps a slip of the keyboard from filling the memory.</summary>
    private const int MostPieces = 1_000_000;

    /// <summary>All faults, in the order of the job's fields.</summary>
    public static List<CutFault> Faults(CutJob job)
    {
        var faults = new List<CutFault>();
        CheckAllowance(faults, nameof(job.Kerf), job.Kerf);
        CheckAllowance(faults, nameof(job.FirstEndTrim), job.FirstEndTrim);
        CheckAllowance(faults, nameof(job.FarEndTrim), job.FarEndTrim);
        CheckAllowance(faults, nameof(job.MinimumUsableLeftover), job.MinimumUsableLeftover);
        CheckTrim(faults, nameof(job.FirstEndTrim), job.FirstEndTrim, job.Kerf);
        CheckTrim(faults, nameof(job.FarEndTrim), job.FarEndTrim, job.Kerf);
        for (var i = 0; i < job.Offers.Count; i++)
        {
            var place = string.Create(CultureInfo.InvariantCulture, $"{nameof(job.Offers)}[{i}]");
            CheckLength(faults, place, job.Offers[i].Length);
            if (job.Offers[i].Price is < 0 or > 100_000)
            {
                faults.Add(
                    new(
                        place,
                        string.Create(CultureInfo.InvariantCulture, $"price {job.Offers[i].Price}"),
                        "0 to 100000",
                        "Give the price of one length, or leave all prices out."
                    )
                );
            }
        }

        foreach (var stock in job.OnHand)
        {
            CheckLength(faults, stock.Label, stock.Length);
            CheckCount(faults, stock.Label, stock.Count);
        }

        foreach (var piece in job.Wanted)
        {
            CheckLength(faults, piece.Label, piece.Length);
            CheckCount(faults, piece.Label, piece.Count);
        }

        var pieces = job.Wanted.Sum(piece => (long)piece.Count) + job.OnHand.Sum(stock => (long)stock.Count);
        if (pieces > MostPieces)
        {
            faults.Add(
                new(
                    nameof(job.Wanted),
                    string.Create(CultureInfo.InvariantCulture, $"{pieces} pieces"),
                    string.Create(CultureInfo.InvariantCulture, $"at most {MostPieces}, wanted and on hand together"),
                    "Check the counts."
                )
            );
        }

        if (faults.Count == 0)
        {
            CheckFit(faults, job);
        }

        return faults;
    }

    /// <summary>The fault of pieces that no stock holds any more, once the pieces on hand are used up.</summary>
    public static CutFault NotEnoughOnHand(string label, int count, long length) =>
        new(
            label,
            string.Create(CultureInfo.InvariantCulture, $"{count} x {Text(CutGrain.Metres(length))}"),
            "a stock that can be bought, or more pieces on hand, to hold every piece",
            "Add a stock length to buy that is long enough, or shorten or split the piece."
        );

    private static void CheckFit(List<CutFault> faults, CutJob job)
    {
        var trims = CutGrain.Up(job.FirstEndTrim) + CutGrain.Up(job.FarEndTrim);
        long room = 0;
        foreach (var offer in job.Offers)
        {
            room = Math.Max(room, CutGrain.Down(offer.Length) - trims);
        }

        foreach (var stock in job.OnHand)
        {
            room = Math.Max(room, CutGrain.Down(stock.Length) - (stock.AlreadySquare ? 0 : trims));
        }

        foreach (var piece in job.Wanted.Where(piece => CutGrain.Up(piece.Length) > room))
        {
            faults.Add(
                new(
                    piece.Label,
                    Text(piece.Length),
                    $"at most {Text(CutGrain.Metres(room))}, the longest stock less its trims",
                    "Add a longer stock length, or split the piece with a coupling."
                )
            );
        }
    }

    private static void CheckAllowance(List<CutFault> faults, string place, double value)
    {
        if (!(value >= 0 && value <= LongestLength))
        {
            faults.Add(new(place, Text(value), $"0 to {Text(LongestLength)}", "Give a length in this range."));
        }
    }

    private static void CheckTrim(List<CutFault> faults, string place, double trim, double kerf)
    {
        if (trim > 0 && trim < kerf)
        {
            faults.Add(
                new(
                    place,
                    Text(trim),
                    $"0, or at least the kerf of {Text(kerf)}",
                    "A squaring cut takes the saw's width at least; give 0 when the end is not cut."
                )
            );
        }
    }

    private static void CheckLength(List<CutFault> faults, string place, double value)
    {
        if (!(value >= 0.001 && value <= LongestLength))
        {
            faults.Add(
                new(place, Text(value), $"{Text(0.001)} to {Text(LongestLength)}", "Give a length in this range.")
            );
        }
    }

    private static void CheckCount(List<CutFault> faults, string place, int count)
    {
        if (count < 1)
        {
            faults.Add(
                new(
                    place,
                    string.Create(CultureInfo.InvariantCulture, $"count {count}"),
                    "1 or more",
                    "Leave the entry out when none is meant."
                )
            );
        }
    }

    private static string Text(double metres) =>
        string.Create(CultureInfo.InvariantCulture, $"{metres * 1000:0.##} mm");
}
