using Dripwright.Sheets.Model;
using SkiaSharp;

namespace Dripwright.Sheets.Writing;

/// <summary>
/// Writes sheets as one PDF: true scale, text that can be searched and copied, both weights of the font embedded. The
/// same sheets give the same bytes.
/// </summary>
public static class PdfWriter
{
    private const float PointsPerMillimetre = 72f / 25.4f;

    // No clock: a build pack made twice from the same rig is the same file.
    private static readonly DateTime s_made = new(2000, 1, 1, 0, 0, 0, DateTimeKind.Utc);

    /// <summary>The sheets as a PDF file.</summary>
    /// <param name="sheets">At least one sheet.</param>
    /// <param name="title">Title of the document.</param>
    /// <param name="palette">Colours; <see cref="Palette.Print"/> unless told.</param>
    /// <exception cref="ArgumentException">There is no sheet.</exception>
    public static byte[] Write(IReadOnlyList<Sheet> sheets, string title, Palette? palette = null)
    {
        using var memory = new MemoryStream();
        Write(memory, sheets, title, palette);
        return memory.ToArray();
    }

    /// <summary>Writes the sheets as a PDF file to a stream, which stays open.</summary>
    /// <param name="stream">Where to.</param>
    /// <param name="sheets">At least one sheet.</param>
    /// <param name="title">Title of the document.</param>
    /// <param name="palette">Colours; <see cref="Palette.Print"/> unless told.</param>
    /// <exception cref="ArgumentException">There is no sheet.</exception>
    public static void Write(Stream stream, IReadOnlyList<Sheet> sheets, string title, Palette? palette = null)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        if (sheets.Count == 0)
        {
            throw new ArgumentException("A PDF needs at least one sheet.", nameof(sheets));
        }

        var metadata = new SKDocumentPdfMetadata
        {
            Title = title,
            Creator = "Dripwright",
            Creation = s_made,
            Modified = s_made,
            // The page box is rounded to this grid.
            RasterDpi = 300,
            EncodingQuality = 101,
        };
        using var document = SKDocument.CreatePdf(stream, metadata);
        foreach (var sheet in sheets)
        {
            var paper = sheet.Paper;
            var canvas = document.BeginPage((float)(paper.Width * 72 / 25.4), (float)(paper.Height * 72 / 25.4));
            canvas.Scale(PointsPerMillimetre);
            var shapes = new PdfShapes(canvas, palette ?? Palette.Print);
            foreach (var element in sheet.Elements)
            {
                shapes.Write(element);
            }

            document.EndPage();
        }

        document.Close();
    }
}
