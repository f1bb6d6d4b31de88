using Dripwright.Engine;
using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Language.Report;

/// <summary>One figure a grower asks for first.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Value">The value in the rig's units.</param>
/// <param name="Remark">Where, or how good; empty where there is nothing to add.</param>
public sealed record KeyFigure(string Name, string Value, string Remark = "")
{
    /// <summary>Whether it is among the few that tell on a cover whether the rig will do.</summary>
    public bool Chief { get; init; }
}

/// <summary>What a group of key figures is about.</summary>
public enum FigureSubject
{
    /// <summary>The pots and their water.</summary>
    Pots,

    /// <summary>The pump, or what gravity does in its place.</summary>
    Pump,

    /// <summary>The drain.</summary>
    Drain,

    /// <summary>The reservoir.</summary>
    Reservoir,

    /// <summary>The wire over the rows.</summary>
    CropWire,

    /// <summary>The nutrient solution.</summary>
    Nutrients,

    /// <summary>The stand.</summary>
    Stand,

    /// <summary>The parts list.</summary>
    Parts,
}

/// <summary>Key figures of one stage of the job.</summary>
/// <param name="Subject">What they are about.</param>
/// <param name="Heading">The same in words.</param>
/// <param name="Figures">Its figures.</param>
public sealed record KeyFigureGroup(FigureSubject Subject, string Heading, IReadOnlyList<KeyFigure> Figures);

/// <summary>A plan in the words and units of the grower: what a first look must show.</summary>
/// <param name="Title">Rig and place.</param>
/// <param name="Sentence">What the rig is, in one or two sentences.</param>
/// <param name="Groups">Key figures by stage.</param>
/// <param name="Findings">Findings, the gravest first.</param>
/// <param name="Assumed">What the rig file did not say.</param>
public sealed record PlanSummary(
    string Title,
    string Sentence,
    IReadOnlyList<KeyFigureGroup> Groups,
    IReadOnlyList<ToldFinding> Findings,
    IReadOnlyList<Assumed> Assumed
)
{
    /// <summary>Sums up a plan.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="wanted">Units to tell it in; the rig's own where null.</param>
    public static PlanSummary Of(Plan plan, UnitSystem? wanted = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var units = wanted ?? plan.Rig.Units;
        var told = new PlanWords(units);
        var words = told.Quantities;
        return new PlanSummary(
            $"{plan.Rig.Name}, {plan.Rig.Site.Name}",
            RigSentence.Of(plan, told),
            [
                WaterFigures.Pots(plan, told),
                WaterFigures.Pump(plan, words),
                WaterFigures.Drain(plan, told),
                WaterFigures.Reservoir(plan, told),
                .. CropWireFigures.Of(plan, words) is { } cropWire ? new[] { cropWire } : [],
                .. NutrientFigures.Of(plan, told) is { } nutrients ? new[] { nutrients } : [],
                .. StandFigures.Of(plan, told) is { } stand ? new[] { stand } : [],
                PartsFigures.Of(plan, told),
            ],
            told.Of(plan.Findings),
            plan.Assumed
        );
    }
}
