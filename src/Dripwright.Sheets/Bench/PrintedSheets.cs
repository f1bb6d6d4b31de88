using Dripwright.Engine;
using Dripwright.Engine.Printed;
using Dripwright.Engine.Units;
using Dripwright.Language;
using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Bench;

/// <summary>What is printed for the stands: each part with its picture, how many, what it takes and how it lies on the bed.</summary>
public static class PrintedSheets
{
    private const double PictureWidth = 46;
    private const double PictureHeight = 42;
    private const double Ahead = 5;
    private static readonly TextStyle s_text = TextStyle.Note;

    private static string Title => Words.Of("bench.printed.title");

    /// <summary>The sheets; none where nothing is printed.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="pictures">Pictures and masses of its printed parts; a part without one is told in words.</param>
    /// <param name="paper">Size of the sheets; they stand upright.</param>
    public static IReadOnlyList<SheetDraft> Draw(Plan plan, IReadOnlyList<PrintedPicture> pictures, Paper paper)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(pictures);
        ArgumentNullException.ThrowIfNull(paper);
        if (plan.Printed.Made is not { } made)
        {
            return [];
        }

        var told = new PlanWords(plan.Rig.Units);
        var flow = new Flow(paper.Portrait, Title).Heading(Title);
        var tubes = plan.Printed.Parts.Any(part => part.Design.Kind == PrintedKind.Coupon);
        var settings = Words.Of(
            "bench.printed.settings",
            made.Plastic.Name,
            Mm(made.Printer.Nozzle),
            Mm(made.Printer.Layer),
            Mm(made.Printer.BedWidth),
            Mm(made.Printer.BedDepth)
        );
        var tube = tubes ? Words.Of("bench.printed.tube", Mm(made.TubeOutside), Mm(made.Clearance)) + " " : "";
        flow.Paragraph($"{tube}{settings} {Words.Of("bench.printed.files")}");
        flow.Caution(Heat(made));
        if (tubes)
        {
            flow.Paragraph(Words.Of("bench.printed.coupon", PrintedParts.Coupon));
        }

        if (
            plan.Printed.Parts.Any(part =>
                part.Design is { Strength: null, Hanger: null, Kind: not PrintedKind.Coupon }
            )
        )
        {
            flow.Paragraph(Words.Of("bench.printed.infill"));
        }

        foreach (var refused in plan.Printed.Refused)
        {
            flow.Caution(
                Words.Of(
                    "bench.printed.refused",
                    refused.Number,
                    told.Of(refused.Fault.Found),
                    told.Of(refused.Fault.Expected),
                    told.Of(refused.Fault.Remedy)
                )
            );
        }

        foreach (var part in plan.Printed.Parts)
        {
            var picture = pictures.FirstOrDefault(p => p.Number == part.Number);
            var lines = Lines(part, picture, told, flow.Width - PictureWidth - Ahead);
            var height = Math.Max(
                picture is null ? 0 : PictureHeight,
                (lines.Count * s_text.LineHeight) + TextStyle.Body.LineHeight + 2
            );
            flow.Figure(height + 3, box => Part(box, part, picture, lines));
        }

        flow.Table(Sum(plan, made, pictures));
        return flow.Build();
    }

    private static string Heat(PrintParameters made)
    {
        var plastic = made.Plastic;
        var warm = made.Load.Temperature > plastic.WarmestInUse;
        return Words.Of(
                "bench.printed.heat",
                plastic.Name,
                Celsius(plastic.CreepTemperature),
                Celsius(plastic.WarmestInUse)
            )
            + " "
            + Words.Of(warm ? "bench.printed.heat.warm" : "bench.printed.heat.cool", Celsius(made.Load.Temperature));
    }

    private static IReadOnlyList<string> Lines(PrintedPart part, PrintedPicture? picture, PlanWords told, double width)
    {
        var fitting = part.Design;
        var size = fitting.Box.Size;
        List<string> texts = [Words.Of("bench.printed.use", Wording.Capital(told.Of(part.Use)))];
        if (picture is { } known)
        {
            texts.Add(
                Words.Of("bench.printed.each", Grams(known.Estimate.Mass), Metres(known.Estimate.FilamentLength))
            );
        }

        texts.Add(Words.Of("bench.printed.size", Round(size.X), Round(size.Y), Round(size.Z), Mm(fitting.Wall)));
        if (fitting.Strength is not null && part.Moment != MomentSource.None)
        {
            texts.Add(
                Words.Of(
                    part.Moment == MomentSource.Frame ? "bench.printed.moment.frame" : "bench.printed.moment.push",
                    Moment(fitting)
                )
            );
        }

        if (fitting.Hanger is { } hanger)
        {
            texts.Add(
                Words.Of(
                    "bench.printed.hanger",
                    QuantityWords.Number(hanger.Load, "0"),
                    QuantityWords.Number(hanger.Carries, "0")
                )
            );
        }

        texts.Add(told.Of(fitting.Orientation));
        // The heat is said once, above.
        texts.AddRange(
            fitting
                .Cautions.Where(caution => caution != PrintDesigner.HeatCaution(fitting.Parameters))
                .Select(caution => Words.Of("bench.printed.mind", told.Of(caution)))
        );
        return [.. texts.SelectMany(text => TextMeasure.Wrap(Wording.Sentence(text), width, s_text))];
    }

    private static Group Part(Box box, PrintedPart part, PrintedPicture? picture, IReadOnlyList<string> lines)
    {
        List<Element> elements = [new Line(box.TopLeft, new(box.Right, box.Y), Pen.Faint)];
        if (picture is not null)
        {
            elements.Add(Picture(new(box.X, box.Y + 2, PictureWidth, PictureHeight - 1), picture));
        }

        var left = box.X + PictureWidth + Ahead;
        var top = box.Y + 2 + TextStyle.Body.Size;
        elements.Add(Mark.TickBox(new(box.Right - 5, box.Y + 2)));
        elements.Add(
            new Text(
                $"{part.Number}  {PrintedNames.Of(part.Design.Kind)}  × {Wording.Count(part.Count * part.Design.Pieces)}",
                new(left, top),
                TextStyle.Body.Bold
            )
        );
        elements.AddRange(
            lines.Select(
                (line, i) =>
                    new Text(line, new(left, top + TextStyle.Body.LineHeight + (i * s_text.LineHeight)), s_text)
            )
        );
        return new(elements) { Class = "figure", Title = $"{part.Number}, {PrintedNames.Of(part.Design.Kind)}" };
    }

    /// <summary>In the middle of its box, at its own size where that fits.</summary>
    private static Group Picture(Box box, PrintedPicture picture)
    {
        var scale = Math.Min(1, Math.Min(box.Width / picture.Width, box.Height / picture.Height));
        var corner = box.Centre.Move(-picture.Width * scale / 2, -picture.Height * scale / 2);
        Point At(Point p) => corner + (p * scale);
        List<Element> elements = [];
        foreach (var face in picture.Faces)
        {
            List<CurveStep> steps = [];
            foreach (var loop in face.Loops)
            {
                steps.Add(new CurveStep.Move(At(loop[0])));
                steps.AddRange(loop.Skip(1).Select(p => new CurveStep.Straight(At(p))));
                steps.Add(new CurveStep.Close());
            }

            elements.Add(new Curve(steps, null, Tone(face.Light)));
            elements.AddRange(face.Edges.Select(edge => new Line(At(edge.From), At(edge.To), Pen.Thin)));
        }

        return new(elements) { Class = "printed", Title = Words.Of("bench.printed.picture", picture.Number) };
    }

    private static Fill Tone(double light) =>
        light > 0.75 ? Fill.Paper
        : light > 0.35 ? new(DrawnRole.Explain, FillPattern.Tint)
        : new(DrawnRole.Faint);

    private static Table Sum(Plan plan, PrintParameters made, IReadOnlyList<PrintedPicture> pictures)
    {
        var table = new Table(
            new(Words.Of("bench.printed.column.part")),
            new(Words.Of("bench.printed.column.pieces"), Align.Right),
            new(Words.Of("bench.printed.column.mass"), Align.Right),
            new(Words.Of("bench.printed.column.filament"), Align.Right)
        );
        double mass = 0;
        double length = 0;
        foreach (var part in plan.Printed.Parts)
        {
            var pieces = part.Count * part.Design.Pieces;
            var each =
                pictures.FirstOrDefault(p => p.Number == part.Number)?.Estimate
                ?? PrintEstimate.Of(part.Design.Shape.MostVolume, made.Plastic, made.Printer);
            mass += pieces * each.Mass;
            length += pieces * each.FilamentLength;
            table.Row(
                $"{part.Number}, {PrintedNames.Of(part.Design.Kind)}",
                Wording.Count(pieces),
                Grams(pieces * each.Mass),
                Metres(pieces * each.FilamentLength)
            );
        }

        table.Row(Words.Of("bench.printed.all"), "", Grams(mass), Metres(length));
        return table;
    }

    // Slicers and printers speak millimetres and grams everywhere.
    private static string Mm(double metres) => $"{QuantityWords.Number(metres * 1000, "0.##")} mm";

    private static string Round(double metres) => QuantityWords.Number(metres * 1000, "0");

    private static string Grams(double kilograms) => $"{QuantityWords.Number(kilograms * 1000, "0")} g";

    private static string Metres(double metres) => $"{QuantityWords.Number(metres, "0.0")} m";

    private static string Celsius(double kelvins) => $"{QuantityWords.Number(kelvins - 273.15, "0")} °C";

    private static string Moment(PrintDesign fitting) =>
        $"{QuantityWords.Number(fitting.Parameters.Load.Moment, "0.#")} N m";
}
