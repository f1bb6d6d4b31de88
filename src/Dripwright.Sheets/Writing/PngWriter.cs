using Dripwright.Sheets.Model;
using SkiaSharp;

namespace Dripwright.Sheets.Writing;

/// <summary>Writes a sheet as a picture of dots, for places that take neither SVG nor PDF.</summary>
public static class PngWriter
{
    /// <summary>The sheet as a PNG file.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="dotsPerMillimetre">[1/mm] Fineness, above 0; 8 is about 200 dots an inch.</param>
    /// <param name="palette">Colours; <see cref="Palette.Print"/> unless told.</param>
    /// <exception cref="ArgumentOutOfRangeException">The picture would have no dot, or more than 50 million.</exception>
    public static byte[] Write(Sheet sheet, double dotsPerMillimetre = 8, Palette? palette = null)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var colours = palette ?? Palette.Print;
        var width = Math.Ceiling(sheet.Paper.Width * dotsPerMillimetre);
        var height = Math.Ceiling(sheet.Paper.Height * dotsPerMillimetre);
        if (!(width >= 1 && height >= 1 && width * height <= 5e7))
        {
            throw new ArgumentOutOfRangeException(
                nameof(dotsPerMillimetre),
                dotsPerMillimetre,
                "Too few or too many dots."
            );
        }

        using var surface = SKSurface.Create(new SKImageInfo((int)width, (int)height));
        var canvas = surface.Canvas;
        canvas.Clear(SKColor.Parse(colours.Colours[DrawnRole.Paper]));
        canvas.Scale((float)dotsPerMillimetre);
        var shapes = new PdfShapes(canvas, colours);
        foreach (var element in sheet.Elements)
        {
            shapes.Write(element);
        }

        using var image = surface.Snapshot();
        using var data = image.Encode(SKEncodedImageFormat.Png, 100);
        return data.ToArray();
    }
}
