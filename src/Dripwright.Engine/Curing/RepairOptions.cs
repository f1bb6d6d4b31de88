using System.Text.RegularExpressions;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Curing;

/// <summary>What may be changed to make a rig work, and how far is looked.</summary>
public sealed partial record RepairOptions
{
    /// <summary>
    /// What nobody changes to get rid of a finding: the room, the water that comes from the tap, and what is grown where. A
    /// field is named without the numbers of its list, <c>rows.pots</c> for every row; a section stands for all its fields.
    /// </summary>
    public static IReadOnlyList<string> UsuallyKept { get; } =
    [
        "site.roomLength",
        "site.roomWidth",
        "site.roomHeight",
        "site.outletHeight",
        "site.outletDistance",
        "nutrients.water",
        "nutrients.crop",
        "rows.pot",
        "rows.pots",
        "rows.count",
        "rows.planting.pots",
        "rows.planting.crop",
        "rows.planting.plants",
        "reservoir.daysWanted",
    ];

    /// <summary>Fields that stay as they are, beside the grower's own pump.</summary>
    public IReadOnlyList<string> Kept { get; init; } = UsuallyKept;

    /// <summary>Trials at most; each plans a rig as far as it takes to know whether it serves.</summary>
    public int MostTrials { get; init; } = 600;

    /// <summary>Rigs that work after which no more are looked for.</summary>
    public int MostFound { get; init; } = 6;

    /// <summary>Asks to stop; what was found so far is the answer.</summary>
    public CancellationToken Stop { get; init; }

    /// <summary>The kept fields for a rig: a pump with figures of its own is the grower's.</summary>
    internal IReadOnlyList<string> KeptOf(Rig rig) =>
        rig.Pump is { Curve: null, ShutOffHead: null, OpenFlow: null, Power: null } ? Kept : [.. Kept, "pump"];

    /// <summary>The kept field that a change would change; null where it may be made.</summary>
    internal static string? Keeping(IReadOnlyList<string> kept, string path)
    {
        var plain = Numbers().Replace(path, "");
        return kept.FirstOrDefault(k => plain == k || Under(plain, k) || Under(k, plain));
    }

    private static bool Under(string path, string section) =>
        path.Length > section.Length
        && path[section.Length] == '.'
        && path.StartsWith(section, StringComparison.Ordinal);

    [GeneratedRegex(@"\[\d+\]", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Numbers();
}
