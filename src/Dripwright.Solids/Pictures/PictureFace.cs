namespace Dripwright.Solids.Pictures;

/// <summary>A point on paper.</summary>
/// <param name="X">[mm] To the right, of the part's own size.</param>
/// <param name="Y">[mm] Down.</param>
public readonly record struct PicturePoint(double X, double Y);

/// <summary>A face of a part as it is seen; faces are given from the far ones to the near ones, so each hides what it must.</summary>
/// <param name="Loops">Outlines of the face, to be filled by the even-odd rule.</param>
/// <param name="Edges">Sharp edges of the face, to be drawn over its fill.</param>
/// <param name="Light">[-] From 0, turned away from the light, to 1.</param>
public sealed record PictureFace(
    IReadOnlyList<IReadOnlyList<PicturePoint>> Loops,
    IReadOnlyList<(PicturePoint From, PicturePoint To)> Edges,
    double Light
);
