using System.Runtime.InteropServices;
using System.Text;
using Microsoft.Win32.SafeHandles;

namespace Dripwright.Files;

/// <summary>What the platform's library cannot ask of the system: folders renamed in one step, and flushed to the disk.</summary>
internal static class Disk
{
    private const int CurrentFolder = -100;
    private const uint Exchange = 2;

    // Linux and macOS number the first two alike, the last one differently.
    private const int NotPermitted = 1;
    private const int InvalidArgument = 22;
    private const int NoSuchCall = 38;
    private const int NotSupportedLinux = 95;
    private const int NotSupportedMac = 45;

    /// <summary>Lets two folders change names in one step: at no moment is one of the names missing.</summary>
    /// <returns>False where this system or this kind of disk cannot do it; then nothing was changed.</returns>
    /// <exception cref="IOException">The system can do it, and it failed.</exception>
    public static bool TryExchange(string one, string other)
    {
        if (!OperatingSystem.IsLinux())
        {
            return false;
        }

        try
        {
            if (RenameAt2(CurrentFolder, Text(one), CurrentFolder, Text(other), Exchange) == 0)
            {
                return true;
            }
        }
        catch (Exception missing) when (missing is EntryPointNotFoundException or DllNotFoundException)
        {
            return false;
        }

        var error = Marshal.GetLastPInvokeError();
        return error is NoSuchCall or InvalidArgument or NotSupportedLinux or NotPermitted
            ? false
            : throw Failure(error, one);
    }

    /// <summary>Gives a folder a name that is free or that of an empty folder. Whatever else has the name stays.</summary>
    /// <exception cref="IOException">The name is taken, or the disk failed; then nothing was changed.</exception>
    public static void MoveToFreePlace(string from, string to)
    {
        if (OperatingSystem.IsWindows())
        {
            if (Directory.Exists(to))
            {
                Directory.Delete(to);
            }

            Directory.Move(from, to);
        }
        else if (Rename(Text(from), Text(to)) != 0)
        {
            throw Failure(Marshal.GetLastPInvokeError(), to);
        }
    }

    /// <summary>Waits until the names in a folder are on the disk. Windows does so by itself.</summary>
    /// <exception cref="IOException">The disk failed.</exception>
    public static void FlushFolder(string folder)
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        var handle = Open(Text(folder), 0);
        if (handle < 0)
        {
            throw Failure(Marshal.GetLastPInvokeError(), folder);
        }

        try
        {
            // Some disks keep no names that could be flushed, and say so: all that can be done is done then.
            if (
                Sync(handle) != 0
                && Marshal.GetLastPInvokeError()
                    is var error
                        and not (InvalidArgument or NotSupportedLinux or NotSupportedMac)
            )
            {
                throw Failure(error, folder);
            }
        }
        finally
        {
            _ = Close(handle);
        }
    }

    /// <summary>Opens a file for reading past the locks that the platform's own opening asks for. Not on Windows.</summary>
    /// <returns>Null where there is no such file.</returns>
    /// <exception cref="IOException">It cannot be read.</exception>
    public static SafeFileHandle? OpenUnlocked(string path)
    {
        const int NotThere = 2;
        var handle = Open(Text(path), 0);
        return handle >= 0 ? new SafeFileHandle(handle, ownsHandle: true)
            : Marshal.GetLastPInvokeError() is var error and not NotThere ? throw Failure(error, path)
            : null;
    }

    private static IOException Failure(int error, string path) =>
        new($"{Marshal.GetPInvokeErrorMessage(error)}: {path}.");

    private static byte[] Text(string path) => Encoding.UTF8.GetBytes(path + '\0');

    [DllImport("libc", EntryPoint = "renameat2", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int RenameAt2(int fromFolder, byte[] from, int toFolder, byte[] to, uint flags);

    [DllImport("libc", EntryPoint = "rename", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Rename(byte[] from, byte[] to);

    [DllImport("libc", EntryPoint = "open", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Open(byte[] path, int flags);

    [DllImport("libc", EntryPoint = "fsync", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Sync(int handle);

    [DllImport("libc", EntryPoint = "close", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Close(int handle);
}
