using System.Security.Cryptography;
using System.Text;

namespace Dripwright.Files;

/// <summary>By what a lock is judged; see <see cref="WriterLock"/>.</summary>
internal sealed record LockRules
{
    /// <summary>How often its holder writes a new number into the lock.</summary>
    public TimeSpan Beat { get; init; } = TimeSpan.FromSeconds(1);

    /// <summary>How long a lock of another machine must stay unchanged, on our own clock, before its holder counts as dead.</summary>
    public TimeSpan Patience { get; init; } = TimeSpan.FromSeconds(15);

    /// <summary>
    /// 32 hexadecimal digits that tell this run of this operating system from all others: containers of one machine share it, a
    /// machine that starts anew gets another. All zeros where the system has no such id.
    /// </summary>
    public string Machine { get; init; } = RunningSystem();

    private static string RunningSystem()
    {
        try
        {
            var boot = File.ReadAllText("/proc/sys/kernel/random/boot_id");
            return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes("dripwright " + boot)))[
                ..WriterLock.IdLength
            ];
        }
        catch (Exception wrong) when (Writing.IsOfTheDisk(wrong))
        {
            return WriterLock.NoMachine;
        }
    }
}
