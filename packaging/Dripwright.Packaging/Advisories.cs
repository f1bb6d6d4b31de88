namespace Dripwright.Packaging;

/// <summary>Reads what the SDK says about known vulnerabilities of the packages.</summary>
internal static class Advisories
{
    private static readonly string[] s_grades = ["NU1901", "NU1902", "NU1903", "NU1904"];

    /// <summary>Tells what was found.</summary>
    /// <param name="report">What a restore with auditing printed about our packages.</param>
    /// <param name="canary">What it printed about a package whose fault is publicly known.</param>
    /// <param name="to">Where to tell it.</param>
    /// <returns>0: none; 1: some; 3: there was no list to look in, so nothing is known.</returns>
    public static int Tell(string report, string canary, TextWriter to)
    {
        var found = Found(report);
        foreach (var line in found)
        {
            to.WriteLine(line);
        }

        if (found.Count > 0)
        {
            return 1;
        }

        // A source without a list of advisories gives no error: silence alone proves nothing.
        if (Found(canary).Count == 0)
        {
            to.WriteLine(
                "Known vulnerabilities: not checked. The source of packages gave no list of advisories: a package with a publicly known fault passed as sound."
            );
            return 3;
        }

        to.WriteLine("Known vulnerabilities: none in the packages used.");
        return 0;
    }

    private static List<string> Found(string report) =>
        [
            .. report
                .Split('\n', StringSplitOptions.TrimEntries)
                .Where(line => s_grades.Any(grade => line.Contains(grade, StringComparison.Ordinal)))
                .Select(line => line[line.IndexOf("NU190", StringComparison.Ordinal)..].Split(" [", 2)[0])
                .Distinct(StringComparer.Ordinal),
        ];
}
