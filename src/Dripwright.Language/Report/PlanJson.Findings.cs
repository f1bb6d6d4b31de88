using Dripwright.Engine.Findings;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Units;

namespace Dripwright.Language.Report;

/// <content>What the plan has to say, in words and as values.</content>
public static partial class PlanJson
{
    private static void WriteFinding(UnitJson json, Finding finding, PlanWords told)
    {
        var words = told.Of(finding);
        json.Text("rule", finding.Rule);
        json.Text("level", EnumWords.Of(finding.Level));
        json.Text("place", words.Place);
        json.List("places", finding.Places, place => WritePlace(json, place, told));
        json.Text("field", finding.Field);
        json.Texts("fields", finding.Fields);
        json.Text("what", words.What);
        json.Text("found", words.Value);
        WriteMeasured(json, "foundValue", finding.Value);
        json.Text("limit", words.Limit);
        WriteMeasured(json, "limitValue", finding.Limit);
        json.Text("remedy", words.Remedy);
        json.List(
            "cures",
            finding.Cures,
            cure =>
            {
                WriteChanges(json, cure);
                json.Texts("steps", cure.Steps.Select(told.Of));
            }
        );
        json.Text("source", words.Source);
    }

    private static void WritePlace(UnitJson json, Place place, PlanWords told)
    {
        json.Text("name", told.Of(place.Name));
        json.Count("row", place.Row);
        json.Count("pot", place.Pot);
        json.Text("run", place.Run);
        json.Count("hole", place.Hole);
        json.Text("part", place.Part is PlacePart.None ? "" : EnumWords.Of(place.Part));
    }

    private static void WriteChanges(UnitJson json, Cure cure) =>
        json.List(
            "changes",
            cure.Changes,
            change =>
            {
                json.Text("field", change.Field);
                if (change.Text is { } text)
                {
                    json.Text("text", text);
                }
                else
                {
                    json.Null("text");
                }
            }
        );

    /// <summary>The one measured value of a phrase; null where it has none, or several.</summary>
    private static void WriteMeasured(UnitJson json, string name, Phrase phrase)
    {
        if (phrase.Values.OfType<Measured>().ToList() is not [var one])
        {
            json.Null(name);
            return;
        }

        json.Object(
            name,
            () =>
            {
                json.Text("quantity", Quantity(one));
                json.Valued(one.Value, UnitOf(one));
            }
        );
    }

    /// <summary>What a value of plan.json measures.</summary>
    internal static string Quantity(Measured measured) =>
        measured.Form switch
        {
            MeasuredForm.Velocity => "velocity",
            MeasuredForm.Number => "ratio",
            MeasuredForm.Concentration or MeasuredForm.GramsPerLitre => "concentration",
            MeasuredForm.Millimoles => "amount-concentration",
            MeasuredForm.Milliequivalents => "charge-concentration",
            MeasuredForm.NewtonMetres => "moment",
            MeasuredForm.Degrees => "angle",
            MeasuredForm.PH => "ph",
            MeasuredForm.Warming => "temperature-difference",
            _ => EnumWords.Of(measured.Dimension),
        };

    /// <summary>The SI unit in which a value of plan.json is given; empty for plain numbers.</summary>
    internal static string UnitOf(Measured measured) =>
        (measured.Form, measured.Dimension) switch
        {
            (MeasuredForm.Velocity, _) => "m/s",
            (MeasuredForm.Concentration or MeasuredForm.GramsPerLitre, _) => "kg/m3",
            (MeasuredForm.Millimoles or MeasuredForm.Milliequivalents, _) => "mol/m3",
            (MeasuredForm.NewtonMetres, _) => "N m",
            (MeasuredForm.Degrees, _) => "rad",
            (_, Dimension.Length) => "m",
            (_, Dimension.Volume) => "m3",
            (_, Dimension.Flow) => "m3/s",
            (_, Dimension.Pressure) => "Pa",
            (_, Dimension.Temperature) => "K",
            (_, Dimension.Power) => "W",
            (_, Dimension.Voltage) => "V",
            (_, Dimension.Frequency) => "Hz",
            (_, Dimension.Current) => "A",
            (_, Dimension.Duration) => "s",
            (_, Dimension.Mass) => "kg",
            (_, Dimension.Force) => "N",
            (_, Dimension.Conductivity) => "S/m",
            _ => "",
        };
}
