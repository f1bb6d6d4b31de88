using Dripwright.Engine.Printed;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Bench;

/// <summary>How a printed part looks and what it takes, as its solid tells; made by whoever can compute solids.</summary>
/// <param name="Number">Piece number.</param>
/// <param name="Width">[mm] Width of the picture at the part's own size.</param>
/// <param name="Height">[mm] Height of the picture at the part's own size.</param>
/// <param name="Faces">Faces, the far ones first.</param>
/// <param name="Estimate">What one piece takes.</param>
public sealed record PrintedPicture(
    string Number,
    double Width,
    double Height,
    IReadOnlyList<PrintedFace> Faces,
    PrintEstimate Estimate
);

/// <summary>A face of a printed part as it is seen.</summary>
/// <param name="Loops">[mm] Outlines, those of holes the other way round.</param>
/// <param name="Edges">[mm] Sharp edges, drawn over the face.</param>
/// <param name="Light">[-] From 0, turned away from the light, to 1.</param>
public sealed record PrintedFace(
    IReadOnlyList<IReadOnlyList<Point>> Loops,
    IReadOnlyList<(Point From, Point To)> Edges,
    double Light
);
