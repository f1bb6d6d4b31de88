using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Rigs;

/// <summary>Makes a first rig file from a few answers, with a comment at each field.</summary>
public static class RigStarter
{
    /// <summary>The rig that the answers describe; all else is assumed.</summary>
    /// <param name="answers">The answers.</param>
    /// <param name="catalogue">The parts it can name.</param>
    /// <exception cref="StarterException">An answer lies outside what a rig file allows, or the catalogue lacks a part that is assumed.</exception>
    public static Rig Rig(StarterAnswers answers, PartsCatalogue catalogue) => Made(answers, catalogue).Rig;

    /// <summary>What was chosen otherwise than asked or usual, so that the rig holds together: to be told with it.</summary>
    /// <param name="answers">The answers.</param>
    /// <param name="catalogue">The parts it can name.</param>
    /// <exception cref="StarterException">An answer lies outside what a rig file allows, or the catalogue lacks a part that is assumed.</exception>
    public static IReadOnlyList<Phrase> Chosen(StarterAnswers answers, PartsCatalogue catalogue) =>
        Made(answers, catalogue).Chosen;

    private static StarterFit Made(StarterAnswers answers, PartsCatalogue catalogue)
    {
        ArgumentNullException.ThrowIfNull(answers);
        var basis = RigReader.ReadStarter(answers.Units, catalogue);
        var start = basis.Rig ?? throw new StarterException(basis.Faults[0]);
        var row = start.Rows[0] with
        {
            Count = answers.Rows,
            Pots = answers.Pots,
            Spacing = answers.Spacing ?? start.Rows[0].Spacing,
            Arrangement = answers.Arrangement,
            Planting = [new Planting { Crop = answers.Crop }],
        };
        var wire = answers.Units is UnitSystem.Us ? "rope-1/8in" : "rope-4mm";
        var rig = start with
        {
            Name = answers.Name,
            Rows = [row],
            CropWire = start.CropWire with { Wire = wire },
            Nutrients = start.Nutrients with { Crop = Fed(answers.Crop, start.Nutrients, catalogue) },
        };
        rig = answers.Gravity ? Raised(rig) : rig;
        Read(rig);
        // Only what a rig file may say is fitted; the fit is read again, as its file will be.
        var fit = StarterFitting.Of(rig, catalogue);
        return fit with { Rig = Read(fit.Rig) };

        Rig Read(Rig made)
        {
            var reading = RigReader.Read(RigWriter.Write(made), "starter", catalogue);
            return reading.Rig ?? throw new StarterException(reading.Faults[0]);
        }
    }

    /// <summary>The starter rig file: every field with its value and what it means. It reads without a fault.</summary>
    /// <param name="answers">The answers.</param>
    /// <param name="catalogue">The parts it can name.</param>
    /// <exception cref="StarterException">An answer lies outside what a rig file allows, or the catalogue lacks a part that is assumed.</exception>
    public static string Text(StarterAnswers answers, PartsCatalogue catalogue)
    {
        var rig = Rig(answers, catalogue);
        return new RecordText(rig.Units, leaveOutAssumed: false, comments: true).Write(rig);
    }

    // A crop whose recipe is known gets one at once; any other is for the grower to say.
    private static string Fed(string crop, NutrientMix mix, PartsCatalogue catalogue) =>
        catalogue.CropFor(crop) is { } known && catalogue.Targets.StageOf(known.Key, mix.Stage) is not null
            ? known.Key
            : GroupKeys.None;

    // Gravity needs the water above the emitters, and somewhere below the drain for what runs through.
    private static Rig Raised(Rig rig) =>
        rig with
        {
            Pump = rig.Pump with { Model = GroupKeys.None },
            Reservoir = rig.Reservoir with
            {
                Base = QuantityText.Parse(Dimension.Length, rig.Units is UnitSystem.Us ? "6 ft" : "1.8 m"),
            },
            Drain = rig.Drain with { Into = DrainTarget.CatchTank },
            Timer = ByGravity(rig.Timer),
        };

    // What runs through is carried back by hand: a few minutes an hour give a plant its drink and little more.
    internal static Timer ByGravity(Timer timer) => timer with { Mode = TimerMode.Cycle, On = 5 * 60, Off = 55 * 60 };
}
