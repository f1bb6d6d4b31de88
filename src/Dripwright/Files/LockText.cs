using System.Globalization;
using System.Text;

namespace Dripwright.Files;

/// <summary>What a lock file says: who holds it, on which machine, and a number that goes up while it is held.</summary>
/// <param name="Id">The holder's random id.</param>
/// <param name="Machine">The holder's machine; zeros where unknown.</param>
/// <param name="Beat">Goes up while the holder lives.</param>
internal sealed record LockText(string Id, string Machine, long Beat)
{
    private const string Head = "dripwright-lock";

    /// <summary>[bytes] Length of every lock file, so that writing over it never leaves a longer one's tail.</summary>
    public const int Length = 15 + 1 + WriterLock.IdLength + 1 + WriterLock.IdLength + 1 + 16 + 1;

    public byte[] ToBytes() =>
        Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{Head} {Id} {Machine} {Beat:x16}\n"));

    /// <summary>Reads a lock; null where the bytes are no lock of ours.</summary>
    public static LockText? Of(byte[]? bytes)
    {
        if (bytes is null)
        {
            return null;
        }

        var words = Encoding.ASCII.GetString(bytes).TrimEnd('\n').Split(' ');
        return
            bytes.Length == Length
            && words.Length == 4
            && words[0] == Head
            && WriterLock.IsId(words[1])
            && WriterLock.IsId(words[2])
            && long.TryParse(words[3], NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var beat)
            ? new LockText(words[1], words[2], beat)
            : null;
    }

    /// <summary>Whether the file was made and not written: its maker is about to, or a loss of power came between.</summary>
    public static bool IsBlank(ReadOnlySpan<byte> bytes) => bytes.Length <= Length && !bytes.ContainsAnyExcept((byte)0);
}
