using System.Globalization;
using Npgsql;

namespace Dripwright.Store.Ground;

/// <summary>A server in words that may be shown.</summary>
internal static class ServerWords
{
    /// <summary>Database and host; nothing secret.</summary>
    public static string Of(string connection)
    {
        try
        {
            var parts = new NpgsqlConnectionStringBuilder(connection);
            return string.Create(
                CultureInfo.InvariantCulture,
                $"database \"{parts.Database}\" on {parts.Host}:{parts.Port}"
            );
        }
        catch (ArgumentException)
        {
            return "the server";
        }
    }
}
