using System.Globalization;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Parts;

/// <summary>What can be wrong with a <see cref="CutJob"/> before any planning.</summary>
internal static class CutJobCheck
{
    /// <summary>[m] Longer than any stock a row is built from; keeps the whole-number arithmetic far from overflow.</summary>
    private const double LongestLength = 1000;

    /// <summary>No length of pipe costs more in any money.</summary>
    private const int MostPrice = 100_000;

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
            if (job.Offers[i].Price is < 0 or > MostPrice)
            {
                faults.Add(
                    new(
                        place,
                        Phrase.Of("cut.price", string.Create(CultureInfo.InvariantCulture, $"{job.Offers[i].Price}")),
                        Phrase.Of("cut.price.expected", MostPrice),
                        Phrase.Of("cut.price.remedy")
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
                    Phrase.Of("count.pieces.many", pieces.ToString(CultureInfo.InvariantCulture)),
                    Phrase.Of("cut.pieces.expected", MostPieces),
                    Phrase.Of("cut.pieces.remedy")
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
            Phrase.Of("cut.on-hand-short", count, Measured.Length(CutGrain.Metres(length))),
            Phrase.Of("cut.on-hand-short.expected"),
            Phrase.Of("cut.on-hand-short.remedy")
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
                    Phrase.Of(Measured.Length(piece.Length)),
                    Phrase.Of("cut.too-long.expected", Measured.Length(CutGrain.Metres(room))),
                    Phrase.Of("cut.too-long.remedy")
                )
            );
        }
    }

    private static void CheckAllowance(List<CutFault> faults, string place, double value)
    {
        if (!(value >= 0 && value <= LongestLength))
        {
            faults.Add(OutOfRange(place, value, 0));
        }
    }

    private static void CheckTrim(List<CutFault> faults, string place, double trim, double kerf)
    {
        if (trim > 0 && trim < kerf)
        {
            faults.Add(
                new(
                    place,
                    Phrase.Of(Measured.Length(trim)),
                    Phrase.Of("cut.trim.expected", Measured.Length(kerf)),
                    Phrase.Of("cut.trim.remedy")
                )
            );
        }
    }

    private static void CheckLength(List<CutFault> faults, string place, double value)
    {
        if (!(value >= 0.001 && value <= LongestLength))
        {
            faults.Add(OutOfRange(place, value, 0.001));
        }
    }

    private static void CheckCount(List<CutFault> faults, string place, int count)
    {
        if (count < 1)
        {
            faults.Add(
                new(
                    place,
                    Phrase.Of("cut.count", count),
                    Phrase.Of("cut.count.expected"),
                    Phrase.Of("cut.count.remedy")
                )
            );
        }
    }

    private static CutFault OutOfRange(string place, double value, double least) =>
        new(
            place,
            double.IsFinite(value)
                ? Phrase.Of(Measured.Length(value))
                : Phrase.Plain(value.ToString(CultureInfo.InvariantCulture)),
            Phrase.Of("cut.range.expected", Measured.Length(least), Measured.Length(LongestLength)),
            Phrase.Of("cut.range.remedy")
        );
}
