using Dripwright.Engine.Layout;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Views;

/// <summary>Where the pots of a row stand: running from the left end, or pitch and number where figures have no room.</summary>
internal static class PotDimensions
{
    /// <summary>[mm] Running figures need this much from one to the next.</summary>
    private const double RunningPitch = 3.75;

    /// <summary>Whether each pot can have its own figure.</summary>
    public static bool CanRun(RowLayout row, Scale scale) =>
        row.Pots.Count == 1 || (row.Pots.Count <= 48 && scale.OnPaper(row.Spec.Spacing) >= RunningPitch);

    /// <summary>[mm] Room from the dimension line outwards.</summary>
    public static double Depth(RowLayout row, Scale scale, Wording words) =>
        CanRun(row, scale) ? DimensionLine.RunningDepth([words.Mark(row.Pots[^1].Station)]) : 6;

    /// <summary>The dimensions of the pots of a row.</summary>
    /// <param name="row">The row.</param>
    /// <param name="at">Where the extension line of a station begins.</param>
    /// <param name="y">[mm] Height of the dimension line.</param>
    /// <param name="scale">Scale.</param>
    /// <param name="words">Figures.</param>
    /// <param name="below">Texts below the line.</param>
    public static Group Draw(RowLayout row, Func<double, Point> at, double y, Scale scale, Wording words, bool below)
    {
        var stations = row.Pots.Select(p => p.Station).ToList();
        if (CanRun(row, scale) && stations[0] > 1e-6)
        {
            double[] all = [0, .. stations];
            return DimensionLine.HorizontalRunning(
                [.. all.Select(at)],
                y,
                [.. all.Select(s => s == 0 ? "0" : words.Mark(s))],
                below
            );
        }

        List<double> ends = [0];
        List<string> texts = [];
        void Piece(double to, string text)
        {
            if (to - ends[^1] > 1e-6)
            {
                ends.Add(to);
                texts.Add(text);
            }
        }

        Piece(stations[0], words.Mark(stations[0]));
        Piece(stations[^1], words.Repeated(row.Pots.Count - 1, row.Spec.Spacing));
        Piece(row.Length, words.Mark(row.Length - stations[^1]));
        return DimensionLine.HorizontalChain([.. ends.Select(at)], y, texts);
    }
}
