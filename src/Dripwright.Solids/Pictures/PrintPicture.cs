using System.Text;
using Dripwright.Engine.Printed;

namespace Dripwright.Solids.Pictures;

/// <summary>A part seen from above, right and front, all three axes equally short (isometric), hidden faces left out.</summary>
/// <param name="Width">[mm] Width on paper at the part's own size.</param>
/// <param name="Height">[mm] Height on paper.</param>
/// <param name="Faces">Faces, the far ones first.</param>
public sealed record PrintPicture(double Width, double Height, IReadOnlyList<PictureFace> Faces)
{
    private const double Margin = 1;

    /// <summary>The picture of a mesh.</summary>
    /// <param name="mesh">The mesh, in mm.</param>
    public static PrintPicture Of(SolidMesh mesh) => new PictureDrawing(mesh).Draw(Margin);

    /// <summary>The picture of a fitting as it is used, not as it is printed.</summary>
    /// <param name="fitting">The fitting.</param>
    /// <param name="mesh">Its mesh.</param>
    public static PrintPicture InUse(PrintDesign fitting, SolidMesh mesh)
    {
        var where = fitting.InUse;
        return Of(
            mesh with
            {
                Points =
                [
                    .. mesh
                        .Points.Select(p => where.Turned(new(p.X, p.Y, p.Z)))
                        .Select(v => new MeshPoint((float)v.X, (float)v.Y, (float)v.Z)),
                ],
            }
        );
    }

    /// <summary>The picture as a drawing of its own size.</summary>
    /// <param name="title">Title, read out by a screen reader.</param>
    public string ToSvg(string title)
    {
        var text = new StringBuilder();
        var width = Number.Of(Width, 2);
        var height = Number.Of(Height, 2);
        text.Append(
            System.Globalization.CultureInfo.InvariantCulture,
            $"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}mm\" height=\"{height}mm\" viewBox=\"0 0 {width} {height}\" role=\"img\">\n"
        );
        text.Append("<title>").Append(System.Security.SecurityElement.Escape(title)).Append("</title>\n");
        text.Append("<g stroke-linejoin=\"round\" stroke-linecap=\"round\">\n");
        foreach (var face in Faces)
        {
            var grey = Number.Of((int)Math.Round(150 + (100 * face.Light)));
            text.Append("<path fill-rule=\"evenodd\" fill=\"rgb(")
                .Append(grey)
                .Append(',')
                .Append(grey)
                .Append(',')
                .Append(grey);
            // A hairline of the fill's colour closes the seams between neighbours.
            text.Append(")\" stroke=\"rgb(").Append(grey).Append(',').Append(grey).Append(',').Append(grey);
            text.Append(")\" stroke-width=\"0.08\" d=\"");
            foreach (var loop in face.Loops)
            {
                for (var i = 0; i < loop.Count; i++)
                {
                    text.Append(i == 0 ? 'M' : 'L').Append(At(loop[i]));
                }

                text.Append('Z');
            }

            text.Append("\"/>\n");
            if (face.Edges.Count > 0)
            {
                text.Append("<path fill=\"none\" stroke=\"#222\" stroke-width=\"0.25\" d=\"");
                foreach ((var from, var to) in face.Edges)
                {
                    text.Append('M').Append(At(from)).Append('L').Append(At(to));
                }

                text.Append("\"/>\n");
            }
        }

        return text.Append("</g>\n</svg>\n").ToString();
    }

    private static string At(PicturePoint p) => $"{Number.Of(p.X, 2)} {Number.Of(p.Y, 2)}";
}
