using CsCheck;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Stands;
using Dripwright.Engine.Stands.Frame;
using static System.FormattableString;

namespace Dripwright.Engine.Tests.Stands;

/// <summary>Stands as people build them, and as chance does.</summary>
internal static class ManyStands
{
    private static readonly string[] s_us = ["18 in", "20 in", "22 in", "24 in", "27 in", "30 in", "33 in", "36 in"];
    private static readonly string[] s_metric =
    [
        "45 cm",
        "50 cm",
        "55 cm",
        "60 cm",
        "65 cm",
        "70 cm",
        "80 cm",
        "90 cm",
    ];

    /// <summary>Two to twenty pots at eight heights in both systems of units, all else assumed.</summary>
    public static IReadOnlyList<string> Usual { get; } =
    [
        .. new[] { ("us", s_us), ("metric", s_metric) }.SelectMany(units =>
            Enumerable
                .Range(2, 19)
                .SelectMany(pots =>
                    units.Item2.Select(height =>
                        Invariant(
                            $$"""{ "units": "{{units.Item1}}", "rows": [ { "pots": {{pots}}, "standHeight": "{{height}}" } ] }"""
                        )
                    )
                )
        ),
    ];

    /// <summary>Seven hundred drawn ones.</summary>
    public static IReadOnlyList<string> Drawn { get; } = [.. Enumerable.Range(0, 700).Select(Draw)];

    /// <summary>The stand of a rig, or null where the rig is refused or has none.</summary>
    public static StandFrame? Frame(string json, Func<StandOptions, StandOptions>? with = null)
    {
        var rig = RigReader.Read(json, "stand", PartsCatalogue.Default).Resolved;
        return
            rig is not null
            && StandFrame.Of(RigLayout.Of(rig), (with ?? (o => o))(StandOptions.Of(rig.Rig))) is [var first, ..]
            ? first
            : null;
    }

    private static string Draw(int number)
    {
        var dice = new PCG((uint)number, 20260);
        string Of(params string[] choices) => choices[dice.Next((uint)choices.Length)];
        return Invariant(
            $$"""
            {
              "rows": [ {
                "pots": {{1 + dice.Next(20)}}, "standHeight": "{{12 + dice.Next(37)}} in",
                "pot": "{{Of(
                "pot-square-2-gal",
                "pot-square-3-gal",
                "pot-square-5-gal",
                "pot-round-3-gal",
                "pot-round-5-gal"
            )}}",
                "arrangement": "{{Of("single", "single", "staggered")}}"
              } ],
              "stand": {
                "tube": "{{Of("tube-round-1in-16ga", "tube-round-1in-18ga", "tube-square-1in-16ga")}}",
                "bracing": "{{Of("none", "along", "across", "both", "both", "both")}}",
                "lowTies": {{Of("true", "false")}}, "extraFrames": {{dice.Next(3)}},
                "wallLeft": "{{Of("100 %", "100 %", "60 %")}}"
              }
            }
            """
        );
    }
}
