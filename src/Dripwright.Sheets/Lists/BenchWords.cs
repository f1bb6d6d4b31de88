using Dripwright.Engine.Parts;
using Dripwright.Language;

namespace Dripwright.Sheets.Lists;

/// <summary>Names of pieces and holes as they stand on a sheet at the bench.</summary>
internal static class BenchWords
{
    /// <summary>"D1-A, D1-B and 6 more": labels as far as they are worth reading.</summary>
    public static string Labels(IReadOnlyList<string> labels, int most = 12) =>
        labels.Count <= most
            ? string.Join(", ", labels)
            : Words.Of("bench.labels.more", string.Join(", ", labels.Take(most - 1)), labels.Count - most + 1);

    /// <summary>Where round the pipe a hole is made.</summary>
    public static string FaceOf(HoleFace face) =>
        Words.Of(
            face switch
            {
                HoleFace.Top => "bench.face.top",
                HoleFace.Underside => "bench.face.underside",
                _ => "bench.face.side-over-the-water",
            }
        );

    /// <summary>A piece by its label, or the word for one that is a spare.</summary>
    public static string Piece(PlacedPiece piece) => piece.IsSpare ? Words.Of("part.piece.spare") : piece.Label;

    /// <summary>A length of stock that the grower has: "on hand 1".</summary>
    public static string OnHand(string number) => Words.Of("bench.cuts.on-hand", number);

    /// <summary>A hole's number with what it serves: "3, pot 2".</summary>
    public static string Hole(HoleMark mark) =>
        mark.Pot > 0 ? Words.Of("bench.hole.pot", mark.Number, mark.Pot) : Words.Of("bench.hole.siphon", mark.Number);
}
