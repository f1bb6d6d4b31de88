using Dripwright.Engine;
using Dripwright.Engine.Units;
using Dripwright.Language;
using Dripwright.Sheets.Screen;

namespace Dripwright.Workbench.Round;

/// <summary>What the colours of the rig in the round say.</summary>
internal static class RoundLegend
{
    /// <summary>[-] Edges of the steps of load; near the limit they are narrower.</summary>
    public static IReadOnlyList<double> LoadEdges { get; } = [0, 0.2, 0.4, 0.6, 0.8, 0.9, 1];

    /// <summary>Title and steps: each its colour, as SVG takes it, and what it stands for; none where colours say nothing.</summary>
    /// <param name="plan">The plan, in the units to show.</param>
    /// <param name="colour">What the colours say.</param>
    public static (string Title, IReadOnlyList<(string Colour, string Says)> Steps) Of(Plan plan, ScreenColour colour)
    {
        if (colour is ScreenColour.Load)
        {
            var steps = Ramp.Colours.Select((each, i) => (each, Words.Of("round.between", Percent(i), Percent(i + 1))));
            return (Words.Of("round.load"), [.. steps, ("var(--stop)", Words.Of("round.over"))]);
        }

        return StepScale.Of(plan, colour) is { Edges.Count: > 0 } scale
            ? (
                scale.Title,
                [
                    .. Ramp.Colours.Select(
                        (each, i) =>
                            (
                                each,
                                Words.Of("round.between", scale.Text(scale.Edges[i]), scale.Text(scale.Edges[i + 1]))
                            )
                    ),
                ]
            )
            : ("", []);
    }

    private static string Percent(double share) => QuantityWords.Percent(share);
}
