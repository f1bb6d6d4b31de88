using System.Security.Cryptography;
using Dripwright.Language;
using Dripwright.Terminal;

namespace Dripwright.Files;

/// <summary>Lets one writer at a time at a pack: also where the writers run in two containers or on two machines.</summary>
/// <remarks>
/// <para>
/// The lock is a file beside the pack. Its holder made it (the system lets only one make a file of a name), keeps it open with the
/// system's own exclusive lock, and writes a new number into it every second. Process numbers say nothing: two containers have
/// the same ones.
/// </para>
/// <para>
/// The rule for a file that is there already. The system's lock on it cannot be had: its holder lives. It can be had, and the file names
/// our own machine: its holder is dead, for on one machine the system's lock is sure; the lock is taken over at once. It
/// can be had, and the file names another machine, or none: not every shared disk carries the system's lock from machine to
/// machine, so the file is watched. Its number changes: the holder lives. It stays the same for 15 s of our own clock (clocks
/// of two machines are never compared): the holder is dead. Who takes over writes its own id, waits two beats and reads
/// again, so that of two that take over at once the last to write stays.
/// </para>
/// <para>
/// A writer that slept for longer than that may find its lock taken. It looks before it changes anything (<see cref="IsHeld"/>); and should
/// even that come too late, packs are exchanged whole, so that one whole pack follows the other.
/// </para>
/// </remarks>
internal sealed class WriterLock : IDisposable
{
    /// <summary>Letters of an id: 128 random bits in hexadecimal.</summary>
    public const int IdLength = 32;

    /// <summary>Stands for a machine that has no id.</summary>
    public const string NoMachine = "00000000000000000000000000000000";

    private const int MostTries = 20;

    private readonly string _machine;
    private readonly LockFile _file;
    private readonly Timer _timer;
    private long _number;

    private WriterLock(string id, LockFile file, LockRules rules)
    {
        (Id, _file, _machine) = (id, file, rules.Machine);
        _timer = new Timer(_ => Beat(), null, rules.Beat, rules.Beat);
    }

    /// <summary>The holder's random id; its drafts carry it.</summary>
    public string Id { get; }

    /// <summary>Whether the lock is still ours.</summary>
    public bool IsHeld => LockText.Of(_file.ReadByName())?.Id == Id;

    /// <summary>Whether a word can be an id.</summary>
    public static bool IsId(ReadOnlySpan<char> word)
    {
        foreach (var letter in word)
        {
            if (!char.IsAsciiHexDigitLower(letter))
            {
                return false;
            }
        }

        return word.Length == IdLength;
    }

    /// <summary>Takes the lock.</summary>
    /// <param name="path">The lock's file.</param>
    /// <param name="target">What is locked, for the message.</param>
    /// <param name="rules">By what a lock that is there is judged.</param>
    /// <param name="stop">Asks to stop.</param>
    /// <exception cref="Refusal">Somebody else holds it, or the file is no lock.</exception>
    public static WriterLock Take(string path, string target, LockRules rules, CancellationToken stop)
    {
        var id = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(IdLength / 2));
        for (var i = 0; i < MostTries; i++)
        {
            stop.ThrowIfCancellationRequested();
            var isHeld = false;
            var made = LockFile.Open(path, FileMode.CreateNew, out _);
            var file = made ?? LockFile.Open(path, FileMode.Open, out isHeld);
            if (isHeld)
            {
                break;
            }

            try
            {
                if (file is not null && Claim(file, id, isNew: made is not null, path, target, rules, stop))
                {
                    var held = new WriterLock(id, file, rules);
                    file = null;
                    return held;
                }
            }
            finally
            {
                file?.Dispose();
            }
        }

        throw Busy(target);
    }

    /// <summary>Gives the lock back.</summary>
    public void Dispose()
    {
        using (var ended = new ManualResetEvent(false))
        {
            if (_timer.Dispose(ended))
            {
                ended.WaitOne();
            }
        }

        try
        {
            if (IsHeld)
            {
                _file.Remove();
            }
        }
        catch (Exception wrong) when (Writing.IsOfTheDisk(wrong))
        {
            // The next writer takes it over.
        }
        finally
        {
            _file.Dispose();
        }
    }

    // False where the file is no longer the one of that name: look again.
    private static bool Claim(
        LockFile file,
        string id,
        bool isNew,
        string path,
        string target,
        LockRules rules,
        CancellationToken stop
    )
    {
        var isOurs = isNew;
        if (!isNew)
        {
            var found = file.Read();
            var text = LockText.Of(found);
            if (text is null && !LockText.IsBlank(found))
            {
                throw new Refusal(Exit.NotWritten, Words.Of("program.pack.no-lock", path));
            }

            isOurs = text?.Machine == rules.Machine && rules.Machine != NoMachine;
            // Who has just made a file writes into it at once: a blank one is not watched for long.
            if (!isOurs && !StaysAs(found, file, text is null ? 2 * rules.Beat : rules.Patience, target, rules, stop))
            {
                return false;
            }
        }

        file.Write(new LockText(id, rules.Machine, 0));
        if (!isOurs)
        {
            Wait(2 * rules.Beat, stop);
        }

        // The file may have been removed by its last holder after it was opened here: then it is nobody's lock.
        return LockText.Of(file.ReadByName())?.Id == id;
    }

    // False where there is no file of that name any more.
    private static bool StaysAs(
        byte[] found,
        LockFile file,
        TimeSpan time,
        string target,
        LockRules rules,
        CancellationToken stop
    )
    {
        var end = Environment.TickCount64 + (long)time.TotalMilliseconds;
        while (Environment.TickCount64 < end)
        {
            Wait(rules.Beat / 2, stop);
            if (file.ReadByName() is not { } now)
            {
                return false;
            }

            if (!now.AsSpan().SequenceEqual(found))
            {
                throw Busy(target);
            }
        }

        return true;
    }

    private void Beat()
    {
        try
        {
            if (LockText.Of(_file.Read())?.Id == Id)
            {
                _file.Write(new LockText(Id, _machine, ++_number));
            }
        }
        catch (Exception wrong) when (Writing.IsOfTheDisk(wrong))
        {
            // Tried again at the next beat; whether the lock is still ours is looked at before anything is changed.
        }
    }

    private static void Wait(TimeSpan time, CancellationToken stop)
    {
        stop.WaitHandle.WaitOne(time);
        stop.ThrowIfCancellationRequested();
    }

    private static Refusal Busy(string target) => new(Exit.NotWritten, Words.Of("program.pack.busy", target));
}
