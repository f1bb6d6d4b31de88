namespace Dripwright.Packaging;

/// <summary>Reads what the SDK says about known vulnerabilities of the packages.</summary>
internal static class Advisories
{
    private const string Unreached = "NU1900";
    private static readonly string[] s_grades = ["NU1901", "NU1902", "NU1903", "NU1904"];

    /// <summary>Tells what was found.</summary>
    /// <param name="report">What a restore with auditing printed.</param>
    /// <param name="to">Where to tell it.</param>
    /// <returns>0: none; 1: some; 3: nothing could be asked.</returns>
    public static int Tell(string report, TextWriter to)
    {
        var lines = report.Split('\n', StringSplitOptions.TrimEntries);
        var found = lines
            .Where(line => s_grades.Any(grade => line.Contains(grade, StringComparison.Ordinal)))
            .Select(line => line[line.IndexOf("NU190", StringComparison.Ordinal)..])
            .Distinct(StringComparer.Ordinal)
            .ToList();
        foreach (var line in found)
        {
            to.WriteLine(line);
        }

        if (found.Count > 0)
        {
            return 1;
        }

        if (lines.Any(line => line.Contains(Unreached, StringComparison.Ordinal)))
        {
            to.WriteLine("Known vulnerabilities: not checked, for the source of packages gave no list of advisories.");
            return 3;
        }

        to.WriteLine("Known vulnerabilities: none in the packages used.");
        return 0;
    }
}
