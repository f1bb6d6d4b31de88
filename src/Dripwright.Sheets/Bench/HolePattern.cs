using System.Globalization;
using System.Text;
using Dripwright.Engine;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Parts;
using Dripwright.Language;
using Dripwright.Sheets.Lists;

namespace Dripwright.Sheets.Bench;

/// <summary>A piece of pipe with its holes, left to right.</summary>
/// <param name="Run">The run it belongs to.</param>
/// <param name="Piece">The piece.</param>
/// <param name="Marks">Its holes.</param>
internal sealed record DrilledPiece(PipeRun Run, Piece Piece, IReadOnlyList<HoleMark> Marks);

/// <summary>Pieces that are cut and drilled alike.</summary>
/// <param name="Pieces">At least one.</param>
internal sealed record HolePattern(IReadOnlyList<DrilledPiece> Pieces)
{
    /// <summary>The piece that stands for all.</summary>
    public DrilledPiece First => Pieces[0];

    /// <summary>How many to make.</summary>
    public int Count => Pieces.Count;

    /// <summary>True when hole for hole the same pots are served.</summary>
    public bool SamePots =>
        Pieces.All(piece => piece.Marks.Select(m => m.Pot).SequenceEqual(First.Marks.Select(m => m.Pot)));

    /// <summary>Labels of the pieces.</summary>
    public string Labels => BenchWords.Labels([.. Pieces.Select(p => p.Piece.Label)]);

    /// <summary>What the pipe is for.</summary>
    public string Use =>
        First.Run.Service switch
        {
            RunService.Drain => Words.Of("bench.use.drain"),
            RunService.Feed => Words.Of("bench.use.line"),
            _ => Words.Of("bench.use.header"),
        };

    /// <summary>Every drilled piece of a plan, alike ones together, in the order of the runs.</summary>
    public static IReadOnlyList<HolePattern> Of(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var marks = plan.Parts.Holes.ToLookup(hole => hole.Piece);
        var pieces = plan
            .Layout.Runs.SelectMany(run => run.Pieces, (run, piece) => (run, piece))
            .Where(p => marks.Contains(p.piece.Label))
            .Select(p => new DrilledPiece(p.run, p.piece, [.. marks[p.piece.Label].OrderBy(m => m.FromEnd)]));
        return [.. pieces.GroupBy(Shape).Select(group => new HolePattern([.. group]))];
    }

    /// <summary>
    /// [-] How many holes on the pattern starts again: 1 for even steps, 2 for pairs. Null when it does not repeat at
    /// least twice.
    /// </summary>
    public int? Period()
    {
        var steps = First.Marks.Skip(1).Select(m => Hundredths(m.Step)).ToList();
        for (var period = 1; period * 2 <= steps.Count; period++)
        {
            if (Enumerable.Range(period, steps.Count - period).All(i => Math.Abs(steps[i] - steps[i - period]) <= 2))
            {
                return period;
            }
        }

        return null;
    }

    // Pieces that differ by less than a saw or a pencil can tell are one pattern.
    private static string Shape(DrilledPiece piece)
    {
        var shape = new StringBuilder();
        shape.Append(CultureInfo.InvariantCulture, $"{piece.Run.Pipe.Key} {piece.Run.Service}");
        shape.Append(CultureInfo.InvariantCulture, $" {Hundredths(piece.Piece.Length)}");
        foreach (var mark in piece.Marks)
        {
            shape.Append(
                CultureInfo.InvariantCulture,
                $"; {Hundredths(mark.FromEnd)} {mark.Tool.Key} {Hundredths(mark.Diameter)} {mark.Face}"
            );
        }

        return shape.ToString();
    }

    /// <summary>Whole hundredths of a millimetre.</summary>
    private static long Hundredths(double metres) => (long)Math.Round(metres * 1e5);
}
