using Dripwright.Language.Report;

namespace Dripwright.Workbench.Methods;

/// <summary>Which method stands behind a finding or a group of figures.</summary>
internal static class HowKnown
{
    // By the first word that fits: the rules are named after what they judge.
    private static readonly (string Start, string Method)[] s_rules =
    [
        ("uniformity", "uniformity"),
        ("weak-pot", "scatter"),
        ("emitters-unlike", "emitters"),
        ("emitter-", "emitters"),
        ("one-emitter", "uniformity"),
        ("pump-", "pump"),
        ("pot-drain", "pot-drain"),
        ("pots-pond", "pot-drain"),
        ("drain-blocked", "pot-drain"),
        ("drain-share", "dose"),
        ("plants-", "dose"),
        ("pot-dry", "feed-network"),
        ("valves-", "feed-network"),
        ("drain-under", "layout"),
        ("drain-pools", "stand-checks"),
        ("drain-", "drain-water-surface"),
        ("overflow", "drain-back"),
        ("freeboard", "drain-back"),
        ("tank-siphons", "drain-back"),
        ("low-row", "drain-back"),
        ("days-short", "reservoir-days"),
        ("reservoir-runs-out", "reservoir-days"),
        ("runs-dry", "reservoir-days"),
        ("inlet-", "pump"),
        ("cut-", "cutting"),
        ("kerf", "cutting"),
        ("parts-", "parts"),
        ("barb", "parts"),
        ("hole-", "holes"),
        ("velocity", "feed-network"),
        ("flush", "feed-network"),
        ("feed-ec", "solution-ec"),
        ("feed-ph", "solution-ph"),
        ("recipe-", "recipe"),
        ("element-", "recipe"),
        ("bag-", "bags"),
        ("feed-trace", "recipe"),
        ("feed-water", "recipe"),
        ("feed-ammonium", "recipe"),
        ("feed-acid", "recipe"),
        ("feed-chelate", "recipe"),
        ("scale-", "recipe"),
        ("stock-", "recipe"),
        ("solubility-", "formulas-and-salts"),
        ("loop-", "closed-loop"),
        ("lines-fill", "dose"),
        ("lowest-", "reservoir-days"),
        ("water-", "water-analysis"),
        ("feed-", "feed-network"),
        ("no-water", "feed-network"),
        ("empty-pots", "feed-network"),
        ("strainer", "local-losses"),
        ("room-", "layout"),
        ("row-", "layout"),
        ("pots-collide", "layout"),
        ("tank-in", "layout"),
        ("wire-", "crop-wire"),
        ("hook-", "crop-wire"),
        ("lamps-", "crop-wire"),
        ("stand-falls", "stand-checks"),
        ("stand-weak", "stand-checks"),
        ("stand-joint", "stand-checks"),
        ("stand-sags", "stand-checks"),
        ("stand-tips", "stand-checks"),
        ("foot-lifts", "stand-checks"),
        ("feet-slip", "stand-frame"),
        ("stand-walks", "stand-frame"),
        ("stand-", "layout"),
        ("aisle", "layout"),
        ("rise-", "layout"),
    ];

    /// <summary>The method behind a rule; null where a rule is only compared.</summary>
    public static string? Rule(string rule) =>
        s_rules.FirstOrDefault(known => rule.StartsWith(known.Start, StringComparison.Ordinal)).Method;

    /// <summary>The methods behind a group of key figures.</summary>
    public static IReadOnlyList<string> Group(FigureSubject subject) =>
        subject switch
        {
            FigureSubject.Pots => ["dose", "feed-network", "uniformity", "scatter"],
            FigureSubject.Pump => ["pump", "feed-network"],
            FigureSubject.Drain => ["drain-water-surface", "layout"],
            FigureSubject.Reservoir => ["reservoir-days", "drain-back"],
            FigureSubject.CropWire => ["crop-wire"],
            FigureSubject.Nutrients => ["recipe", "solution-ec", "solution-ph"],
            FigureSubject.Stand => ["stand-checks", "stand-loads", "stand-frame"],
            FigureSubject.Parts => ["parts", "cutting"],
            _ => [],
        };

    /// <summary>The heading of a method's page.</summary>
    public static string Title(string method) =>
        MethodText.All.FirstOrDefault(known => known.Name == method).Title ?? method;
}
