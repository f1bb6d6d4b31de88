using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace Dripwright.Store.Backups;

/// <summary>SHA-256 over values in a fixed order, each with its kind and length, so that no two contents read alike.</summary>
/// <remarks>Source: NIST FIPS 180-4, Secure Hash Standard, 2015 (as the platform implements it).</remarks>
internal sealed class ContentSum : IDisposable
{
    private readonly IncrementalHash _hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);

    /// <summary>Adds a value.</summary>
    /// <param name="kind">One letter for what kind it is.</param>
    /// <param name="bytes">Its bytes.</param>
    public void Add(char kind, ReadOnlySpan<byte> bytes)
    {
        Span<byte> head = stackalloc byte[9];
        head[0] = (byte)kind;
        BinaryPrimitives.WriteInt64BigEndian(head[1..], bytes.Length);
        _hash.AppendData(head);
        _hash.AppendData(bytes);
    }

    /// <summary>Adds a text, or that there is none.</summary>
    public void Add(string? text)
    {
        if (text is null)
        {
            Add('0', []);
        }
        else
        {
            Add('t', Encoding.UTF8.GetBytes(text));
        }
    }

    /// <summary>Adds a whole number.</summary>
    public void Add(long number)
    {
        Span<byte> bytes = stackalloc byte[8];
        BinaryPrimitives.WriteInt64BigEndian(bytes, number);
        Add('n', bytes);
    }

    /// <summary>Adds a time to the millisecond, as both databases keep it. One that does not say so is UTC.</summary>
    public void Add(DateTime? at) =>
        Add(
            at is { } known
                ? (known.Kind == DateTimeKind.Local ? known.ToUniversalTime() : known).Ticks
                    / TimeSpan.TicksPerMillisecond
                : -1
        );

    /// <summary>The sum of all that was added, in small hexadecimal digits.</summary>
    public string End() => Convert.ToHexStringLower(_hash.GetHashAndReset());

    public void Dispose() => _hash.Dispose();
}
