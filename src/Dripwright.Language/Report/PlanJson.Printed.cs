using Dripwright.Engine.Printed;

namespace Dripwright.Language.Report;

/// <content>What is printed, and what else could be.</content>
public static partial class PlanJson
{
    private static void WritePrinted(UnitJson json, PrintedPart part, PlanWords told)
    {
        var size = part.Design.Box.Size;
        json.Text("number", part.Number);
        json.Text("kind", EnumWords.Of(part.Design.Kind));
        json.Count("count", part.Count * part.Design.Pieces);
        json.Text("where", told.Of(part.Use));
        json.Metres("width", size.X);
        json.Metres("depth", size.Y);
        json.Metres("height", size.Z);
        json.Metres("wall", part.Design.Wall);
        json.Yes("fitsBed", part.Design.Bed.Fits);
        json.Yes("needsSupport", part.Design.NeedsSupport);
        json.Text("lay", told.Of(part.Design.Orientation));
        json.Texts("cautions", part.Design.Cautions.Select(told.Of));
    }

    private static void WriteSmall(UnitJson json, SmallPart small, PlanWords told)
    {
        json.Text("kind", EnumWords.Of(small.Kind));
        json.Text("field", small.Field);
        json.Count("count", small.Parts.Sum(part => part.Count * part.Design.Pieces));
        json.Text("where", string.Join("; ", small.Parts.Select(part => told.Of(part.Use))));
        json.Text("whyNot", string.Join(" ", small.Refused.Select(refused => told.Of(refused.Fault.Found))));
    }
}
