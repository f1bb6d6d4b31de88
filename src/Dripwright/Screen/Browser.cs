using System.ComponentModel;
using System.Diagnostics;

namespace Dripwright.Screen;

/// <summary>Shows an address in the browser of the person who sits at this machine, where there is one.</summary>
internal static class Browser
{
    /// <summary>What starts it; null where nobody would see it.</summary>
    /// <param name="address">The address to show.</param>
    /// <param name="system">Whose machine this is.</param>
    /// <param name="variable">The environment.</param>
    public static ProcessStartInfo? Start(string address, PlatformID system, Func<string, string?> variable)
    {
        // Over SSH the screen is another machine's.
        if (!string.IsNullOrEmpty(variable("SSH_CONNECTION")))
        {
            return null;
        }

        switch (system)
        {
            case PlatformID.Win32NT:
                return new(address) { UseShellExecute = true };
            case PlatformID.MacOSX:
                return Quiet("open", address);
            default:
                var hasScreen = new[] { "DISPLAY", "WAYLAND_DISPLAY" }.Any(name =>
                    !string.IsNullOrEmpty(variable(name))
                );
                return hasScreen ? Quiet("xdg-open", address) : null;
        }
    }

    /// <summary>Starts it; a machine without a browser is no fault, for the address is printed as well.</summary>
    public static void Show(ProcessStartInfo start)
    {
        try
        {
            using var started = Process.Start(start);
        }
        catch (Win32Exception)
        {
            // No such command here.
        }
    }

    /// <summary>The system that this program runs on.</summary>
    public static PlatformID Here =>
        OperatingSystem.IsMacOS() ? PlatformID.MacOSX
        : OperatingSystem.IsWindows() ? PlatformID.Win32NT
        : PlatformID.Unix;

    // What it says has no place between the program's own lines.
    private static ProcessStartInfo Quiet(string command, string address) =>
        new(command, [address])
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
}
