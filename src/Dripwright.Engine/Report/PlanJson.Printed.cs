using Dripwright.Engine.Printed;

namespace Dripwright.Engine.Report;

/// <content>What is printed, and what else could be.</content>
public static partial class PlanJson
{
    private static void WritePrinted(UnitJson json, PrintedPart part)
    {
        var size = part.Fitting.Box.Size;
        json.Text("number", part.Number);
        json.Text("kind", EnumWords.Of(part.Fitting.Kind));
        json.Count("count", part.Count * part.Fitting.Pieces);
        json.Text("where", part.Use);
        json.Metres("width", size.X);
        json.Metres("depth", size.Y);
        json.Metres("height", size.Z);
        json.Metres("wall", part.Fitting.Wall);
        json.Yes("fitsBed", part.Fitting.Bed.Fits);
        json.Yes("needsSupport", part.Fitting.NeedsSupport);
        json.Text("lay", part.Fitting.Orientation);
        json.Texts("cautions", part.Fitting.Cautions);
    }

    private static void WriteSmall(UnitJson json, SmallPart small)
    {
        json.Text("kind", EnumWords.Of(small.Kind));
        json.Text("field", small.Field);
        json.Count("count", small.Parts.Sum(part => part.Count * part.Fitting.Pieces));
        json.Text("where", string.Join("; ", small.Parts.Select(part => part.Use)));
        json.Text("whyNot", string.Join(" ", small.Refused.Select(refused => refused.Fault.Found)));
    }
}
