namespace Dripwright.Pack;

/// <summary>One file of a build pack, as the pack's list names it.</summary>
/// <param name="Name">Path within the pack, with "/" between its parts; see <see cref="PackNames"/>.</param>
/// <param name="Bytes">[bytes] Length, not negative.</param>
/// <param name="Sha256">SHA-256 of the content as 64 small hexadecimal digits.</param>
public sealed record PackedFile(string Name, long Bytes, string Sha256);
