namespace Dripwright.Engine.Findings;

/// <summary>Says once what is to be said alike of several places.</summary>
internal static class AlikeFindings
{
    /// <summary>[-] Values nearer than this are one: rows alike differ in their last digits, and nobody can measure that.</summary>
    private const double Near = 1e-3;

    /// <summary>The findings in the order in which their rules first spoke, those that say the same joined.</summary>
    public static IReadOnlyList<Finding> Joined(IEnumerable<Finding> findings)
    {
        List<List<Finding>> groups = [];
        foreach (var finding in findings)
        {
            var alike = groups.Find(group => SaysTheSame(group[0], finding));
            if (alike is null)
            {
                groups.Add([finding]);
            }
            else
            {
                alike.Add(finding);
            }
        }

        return [.. groups.Select(group => group.Count == 1 ? group[0] : Joined(group))];
    }

    private static bool SaysTheSame(Finding one, Finding other) =>
        one.Rule == other.Rule
        && one.What.IsNear(other.What, Near)
        && one.Value.IsNear(other.Value, Near)
        && one.Limit.IsNear(other.Limit, Near)
        && one.Remedy.IsNear(other.Remedy, Near);

    private static Finding Joined(List<Finding> alike) =>
        alike[0] with
        {
            Places = [.. alike.SelectMany(f => f.Places).Distinct()],
            Fields = [.. alike.SelectMany(f => f.Fields).Distinct()],
            Cures = Cures(alike),
        };

    // The first cure of each together cures all their places, and so on; where two ask for different things, or one has none,
    // nothing is offered.
    private static List<Cure> Cures(List<Finding> alike)
    {
        List<Cure> cures = [];
        for (var i = 0; i < alike.Min(f => f.Cures.Count); i++)
        {
            FieldChange[] changes = [.. alike.SelectMany(f => f.Cures[i].Changes).Distinct()];
            if (changes.DistinctBy(c => c.Field).Count() == changes.Length)
            {
                cures.Add(new Cure(changes, [.. alike.SelectMany(f => f.Cures[i].Steps).Distinct()]));
            }
        }

        return cures;
    }
}
