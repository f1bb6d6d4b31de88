using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Plots;

/// <summary>Draws what belongs together under one heading.</summary>
internal static class RigPlotPicture
{
    /// <summary>The plots one under the other, all as high.</summary>
    public static Element Draw(RigPlot plot, Box box)
    {
        if (plot.Plots.Count == 1)
        {
            return plot.Plots[0].Draw(box);
        }

        var height = box.Height / plot.Plots.Count;
        return new Group([.. plot.Plots.Select((p, i) => p.Draw(new(box.X, box.Y + (i * height), box.Width, height)))]);
    }
}
