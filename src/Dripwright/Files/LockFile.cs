using Microsoft.Win32.SafeHandles;

namespace Dripwright.Files;

/// <summary>A lock's file, open and held with the system's own exclusive lock.</summary>
internal sealed class LockFile : IDisposable
{
    private const int ThereOnUnix = 17;
    private const int ThereOnWindows = unchecked((int)0x80070050);
    private const int HeldOnLinux = 11;
    private const int HeldOnMac = 35;
    private const int HeldOnWindows = unchecked((int)0x80070020);

    private readonly string _path;
    private readonly SafeFileHandle _file;

    private LockFile(string path, SafeFileHandle file) => (_path, _file) = (path, file);

    /// <summary>Makes the file, or opens the one that is there.</summary>
    /// <param name="path">The file.</param>
    /// <param name="mode">CreateNew or Open.</param>
    /// <param name="isHeld">True where a living process of this machine holds it.</param>
    /// <returns>Null where it is held, where one is there that should be made, or none where one should be.</returns>
    public static LockFile? Open(string path, FileMode mode, out bool isHeld)
    {
        isHeld = false;
        try
        {
            return new LockFile(path, File.OpenHandle(path, mode, FileAccess.ReadWrite, FileShare.None));
        }
        catch (FileNotFoundException) when (mode == FileMode.Open)
        {
            return null;
        }
        catch (IOException wrong)
            when (wrong.HResult is ThereOnUnix or ThereOnWindows or HeldOnLinux or HeldOnMac or HeldOnWindows)
        {
            isHeld = wrong.HResult is HeldOnLinux or HeldOnMac or HeldOnWindows;
            return null;
        }
    }

    /// <summary>What the open file says; at most a byte more than a lock has.</summary>
    public byte[] Read() => Read(_file);

    /// <summary>What the file of that name says now, which may be another one by now; null where there is none.</summary>
    public byte[]? ReadByName()
    {
        // Windows lets nobody put another file in the place of an open one, nor read it.
        if (OperatingSystem.IsWindows())
        {
            return Read(_file);
        }

        using var other = Disk.OpenUnlocked(_path);
        return other is null ? null : Read(other);
    }

    /// <summary>Writes over what it says and waits until that is on the disk, where other machines see it.</summary>
    public void Write(LockText text)
    {
        RandomAccess.Write(_file, text.ToBytes(), 0);
        RandomAccess.FlushToDisk(_file);
    }

    /// <summary>Removes the file and lets go of it.</summary>
    public void Remove()
    {
        // Windows removes no open file; elsewhere nobody must get at it between the two.
        if (OperatingSystem.IsWindows())
        {
            _file.Dispose();
        }

        File.Delete(_path);
        _file.Dispose();
    }

    /// <summary>Lets go of the file, which stays.</summary>
    public void Dispose() => _file.Dispose();

    private static byte[] Read(SafeFileHandle file)
    {
        var bytes = new byte[LockText.Length + 1];
        return bytes[..RandomAccess.Read(file, bytes, 0)];
    }
}
