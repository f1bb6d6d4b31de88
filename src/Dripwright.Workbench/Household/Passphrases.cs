using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace Dripwright.Workbench.Household;

/// <summary>Hashes passphrases and compares them, with the same work whether there is such a person or not.</summary>
/// <remarks>
/// PBKDF2 with HMAC-SHA-512 by the platform's own hasher. Its 220,000 rounds are what the OWASP Password Storage Cheat Sheet asks of it
/// (from memory; an earlier edition asked 210,000). A hash of fewer rounds is made anew when its owner signs in.
/// </remarks>
internal sealed class Passphrases : IDisposable
{
    public const int Rounds = 220_000;

    private const int MostRounds = 10_000_000;

    // Slow on purpose; more than two at once would take the machine from the others.
    private readonly SemaphoreSlim _turn = new(2, 2);
    private readonly PasswordHasher<string> _hasher = new(
        Options.Create(new PasswordHasherOptions { IterationCount = Rounds })
    );
    private readonly string _nobody;
    private long _work;

    public Passphrases() => _nobody = _hasher.HashPassword("", Convert.ToHexString(RandomNumberGenerator.GetBytes(16)));

    /// <summary>Rounds done so far.</summary>
    public long Work => Interlocked.Read(ref _work);

    /// <summary>Rounds of a hash; null where it is none of ours.</summary>
    public static int? RoundsOf(string hash)
    {
        var bytes = new byte[128];
        return
            Convert.TryFromBase64String(hash, bytes, out var length)
            && length >= 13 + 16 + 32
            && bytes[0] == 1
            && BinaryPrimitives.ReadInt32BigEndian(bytes.AsSpan(5)) is > 0 and <= MostRounds and var rounds
            ? rounds
            : null;
    }

    public Task<string> Hash(string passphrase, CancellationToken stop) =>
        InTurn(
            () =>
            {
                Interlocked.Add(ref _work, Rounds);
                return _hasher.HashPassword("", Normal(passphrase));
            },
            stop
        );

    /// <summary>Whether a passphrase is that of a hash, and whether the hash should be made anew.</summary>
    /// <param name="hash">The hash; null where there is nobody of the name. That takes as long.</param>
    /// <param name="passphrase">What was typed.</param>
    /// <param name="stop">Asks to stop.</param>
    public Task<PasswordVerificationResult> Compare(string? hash, string passphrase, CancellationToken stop) =>
        InTurn(
            () =>
            {
                var rounds = RoundsOf(hash ?? _nobody) ?? 0;
                var result = _hasher.VerifyHashedPassword("", hash ?? _nobody, Normal(passphrase));
                // An older hash must not be told by its answering sooner.
                if (rounds < Rounds)
                {
                    _ = Rfc2898DeriveBytes.Pbkdf2(
                        Normal(passphrase),
                        new byte[16],
                        Rounds - rounds,
                        HashAlgorithmName.SHA512,
                        32
                    );
                }

                Interlocked.Add(ref _work, Math.Max(rounds, Rounds));
                return hash is null ? PasswordVerificationResult.Failed : result;
            },
            stop
        );

    public void Dispose() => _turn.Dispose();

    // The same letters typed on another keyboard are the same passphrase (NIST SP 800-63B asks for it). Half pairs become a sign.
    private static string Normal(string passphrase) =>
        Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(passphrase)).Normalize(NormalizationForm.FormKC);

    private async Task<T> InTurn<T>(Func<T> work, CancellationToken stop)
    {
        await _turn.WaitAsync(stop).ConfigureAwait(false);
        try
        {
            return await Task.Run(work, stop).ConfigureAwait(false);
        }
        finally
        {
            _turn.Release();
        }
    }
}
