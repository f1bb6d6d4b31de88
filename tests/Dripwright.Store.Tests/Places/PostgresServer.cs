using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;

[assembly: AssemblyFixture(typeof(Dripwright.Store.Tests.Places.PostgresServer.Stopping))]

namespace Dripwright.Store.Tests.Places;

/// <summary>A PostgreSQL server of our own: a fresh folder, a free loopback port, gone when the tests end.</summary>
/// <remarks>Started by the first test that asks for it. Without the programs the test skips and says so; on CI it fails.</remarks>
public static class PostgresServer
{
    private const string FolderStart = "dripwright-pg-";
    private static readonly Lazy<(string? Words, string? Missing)> s_server = new(Start);
    private static string? s_folder;

    /// <summary>How to reach a database of that name; it need not be there.</summary>
    public static string ConnectionTo(string database)
    {
        var (words, missing) = s_server.Value;
        if (words is null)
        {
            Assert.SkipWhen(Environment.GetEnvironmentVariable("CI") != "true", missing!);
            Assert.Fail(missing!);
        }

        return $"{words};Database={database}";
    }

    private static (string?, string?) Start()
    {
        if (Find("initdb") is not { } initdb || Find("pg_ctl") is not { } control)
        {
            return (null, "No PostgreSQL here (Debian package postgresql): not checked on a real server.");
        }

        Sweep(control);
        var folder = Path.Combine(
            Path.GetTempPath(),
            $"{FolderStart}{Environment.ProcessId.ToString(CultureInfo.InvariantCulture)}"
        );
        s_folder = folder;
        Directory.CreateDirectory(folder);
        if (IsRoot)
        {
            Run("chown", ["postgres", folder]);
        }

        var data = Path.Combine(folder, "data");
        AsPostgres(initdb, "-D", data, "-U", "postgres", "-A", "trust", "-E", "UTF8", "--locale=C", "--no-sync");
        for (var attempt = 1; ; attempt++)
        {
            // Another program may take the port between our asking and the server's start.
            var port = FreePort().ToString(CultureInfo.InvariantCulture);
            var options =
                $"-p {port} -c listen_addresses=127.0.0.1 -c unix_socket_directories={folder}"
                + " -c fsync=off -c max_connections=200";
            try
            {
                AsPostgres(
                    control,
                    "-D",
                    data,
                    "-l",
                    Path.Combine(folder, "log"),
                    "-w",
                    "-t",
                    "60",
                    "-o",
                    options,
                    "start"
                );
                return ($"Host=127.0.0.1;Port={port};Username=postgres;Maximum Pool Size=40", null);
            }
            catch (InvalidOperationException) when (attempt < 3) { }
        }
    }

    private static void Stop(string control, string folder)
    {
        try
        {
            AsPostgres(control, "-D", Path.Combine(folder, "data"), "-m", "immediate", "stop");
        }
        catch (InvalidOperationException)
        {
            // It had ended already.
        }

        Directory.Delete(folder, recursive: true);
    }

    // A test run that was killed leaves its server behind.
    private static void Sweep(string control)
    {
        foreach (var folder in Directory.EnumerateDirectories(Path.GetTempPath(), FolderStart + "*"))
        {
            var owner = Path.GetFileName(folder)[FolderStart.Length..];
            if (int.TryParse(owner, NumberStyles.None, CultureInfo.InvariantCulture, out var id) && !IsRunning(id))
            {
                try
                {
                    Stop(control, folder);
                }
                catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
                {
                    // Another user's, or another run is sweeping it.
                }
            }
        }
    }

    private static bool IsRunning(int process)
    {
        try
        {
            using var other = Process.GetProcessById(process);
            return !other.HasExited;
        }
        catch (ArgumentException)
        {
            return false;
        }
    }

    // The server refuses to run as root.
    private static bool IsRoot => Environment.UserName == "root";

    private static void AsPostgres(string program, params string[] words)
    {
        if (IsRoot)
        {
            Run("runuser", ["-u", "postgres", "--", program, .. words]);
        }
        else
        {
            Run(program, words);
        }
    }

    private static void Run(string program, IEnumerable<string> words)
    {
        // Output goes nowhere by way of the shell: the server would hold a pipe of ours open for as long as it runs.
        var start = new ProcessStartInfo("/bin/sh") { WorkingDirectory = "/" };
        start.ArgumentList.Add("-c");
        start.ArgumentList.Add("exec \"$@\" >/dev/null 2>&1 </dev/null");
        start.ArgumentList.Add("sh");
        start.ArgumentList.Add(program);
        foreach (var word in words)
        {
            start.ArgumentList.Add(word);
        }

        using var process = Process.Start(start)!;
        process.WaitForExit();
        if (process.ExitCode != 0)
        {
            throw new InvalidOperationException(
                program + " ended with " + process.ExitCode.ToString(CultureInfo.InvariantCulture)
            );
        }
    }

    private static string? Find(string program)
    {
        string[] folders =
        [
            .. (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator),
            .. Directory.Exists("/usr/lib/postgresql")
                ? Directory
                    .EnumerateDirectories("/usr/lib/postgresql")
                    .OrderDescending(StringComparer.Ordinal)
                    .Select(version => Path.Combine(version, "bin"))
                : [],
        ];
        return folders.Select(folder => Path.Combine(folder, program)).FirstOrDefault(File.Exists);
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    /// <summary>Stops the server after the last test.</summary>
    public sealed class Stopping : IDisposable
    {
        public void Dispose()
        {
            if (s_folder is { } folder && Directory.Exists(folder) && Find("pg_ctl") is { } control)
            {
                Stop(control, folder);
            }
        }
    }
}
