using System.Text.Encodings.Web;
using System.Text.Json;
using Dripwright.Engine;
using Dripwright.Engine.Printed;

namespace Dripwright.Language.Report;

/// <summary>Writes a plan as JSON for other programs.</summary>
/// <remarks>
/// The same plan gives the same bytes on every machine and in every culture. Every number carries its unit in its name.
/// Handbook page: docs/handbook/plan-json.md
/// </remarks>
public static partial class PlanJson
{
    /// <summary>Version of the format. It changes when a name goes or changes its meaning, not when one is added.</summary>
    public const int Format = 1;

    private static readonly JsonWriterOptions s_options = new()
    {
        Indented = true,
        IndentSize = 1,
        NewLine = "\n",
        // The text stands in a file of its own, never inside a web page: "½" and quotes stay readable.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Writes a plan.</summary>
    /// <param name="plan">The plan.</param>
    /// <returns>UTF-8 text without a byte-order mark, ending with a line feed.</returns>
    public static byte[] Write(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        using var bytes = new MemoryStream();
        using (var writer = new Utf8JsonWriter(bytes, s_options))
        {
            writer.WriteStartObject();
            WritePlan(new UnitJson(writer), plan);
            writer.WriteEndObject();
        }

        bytes.WriteByte((byte)'\n');
        return bytes.ToArray();
    }

    /// <summary>Writes a plan's nutrient solution alone, as it stands under "nutrients" in the whole.</summary>
    /// <param name="plan">A plan that has one.</param>
    /// <returns>UTF-8 text without a byte-order mark, ending with a line feed.</returns>
    /// <exception cref="ArgumentException">The plan has none.</exception>
    public static byte[] WriteNutrients(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var nutrients = plan.Nutrients ?? throw new ArgumentException("The plan has no nutrients.", nameof(plan));
        using var bytes = new MemoryStream();
        using (var writer = new Utf8JsonWriter(bytes, s_options))
        {
            writer.WriteStartObject();
            WriteNutrients(new UnitJson(writer), nutrients, new PlanWords(plan.Rig.Units));
            writer.WriteEndObject();
        }

        bytes.WriteByte((byte)'\n');
        return bytes.ToArray();
    }

    private static void WritePlan(UnitJson json, Plan plan)
    {
        json.Count("format", Format);
        json.Object(
            "rig",
            () =>
            {
                json.Text("name", plan.Rig.Name);
                json.Text("place", plan.Rig.Site.Name);
                json.Text("units", EnumWords.Of(plan.Rig.Units));
                json.Text("notes", plan.Rig.Notes);
            }
        );
        var told = new PlanWords(plan.Rig.Units);
        json.List("findings", plan.Findings, finding => WriteFinding(json, finding, told));
        json.List(
            "assumed",
            plan.Assumed,
            assumed =>
            {
                json.Text("path", assumed.Path);
                json.Text("taken", assumed.Value);
                json.Text("why", assumed.How);
            }
        );
        json.Object("layout", () => WriteLayout(json, plan.Layout, told));
        json.Object("feed", () => WriteFeed(json, plan.Feed, told));
        json.Object("dose", () => WriteDose(json, plan.Dose));
        json.Object("drain", () => WriteDrain(json, plan.Drain));
        json.Object("reservoir", () => WriteReservoir(json, plan.Reservoir));
        json.Object("cropWire", () => WriteCropWire(json, plan.CropWire));
        if (plan.Nutrients is { } nutrients)
        {
            json.Object("nutrients", () => WriteNutrients(json, nutrients, told));
        }
        else
        {
            json.Null("nutrients");
        }

        if (plan.Stand is { } stand)
        {
            json.Object("strength", () => WriteStrength(json, stand, plan.Layout, told));
        }

        json.List("printed", plan.Printed.Parts, part => WritePrinted(json, part, told));
        json.List(
            "couldBePrinted",
            PrintedParts.Small(plan.Rig, plan.Layout).Where(small => !small.Wanted),
            small => WriteSmall(json, small, told)
        );
        json.Texts("cannotBePrinted", plan.Printed.Refused.Select(refused => told.Of(refused.Sentence)));
        WriteParts(json, plan.Parts, told);
    }
}
