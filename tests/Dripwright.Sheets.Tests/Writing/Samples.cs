using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Tests.Writing;

/// <summary>A sheet with one of each element.</summary>
internal static class Samples
{
    public static Sheet OneOfEach(Paper? paper = null) =>
        new(
            paper ?? Paper.A4,
            "One of each <&>",
            [
                new Line(new(30, 20), new(130, 20), Pen.Built),
                new Polyline([new(30, 30), new(60, 40), new(90, 30)], Pen.Return),
                Polyline.Polygon([new(100, 30), new(130, 30), new(115, 45)], Pen.Thin, Fill.Section),
                new Rectangle(new(30, 50, 40, 20), Pen.Built, Fill.StandingWater),
                new Circle(new(100, 60), 10, Pen.Plant, Fill.Medium),
                new Circle(new(130, 60), 10, Pen.Centre, new(DrawnRole.Care, FillPattern.CrossHatch)),
                new Arc(new(160, 60), 10, -90, 270, Pen.Water),
                new Curve(
                    [
                        new CurveStep.Move(new(30, 90)),
                        new CurveStep.Cubic(new(40, 70), new(60, 110), new(70, 90)),
                        new CurveStep.Straight(new(70, 100)),
                        new CurveStep.Close(),
                    ],
                    Pen.Neighbour,
                    new(DrawnRole.Water, FillPattern.Tint)
                ),
                new Text("1 ¹¹⁄₁₆ in, Ø 19 × 1.2 m², 5 ½ ° <&>", new(30, 120), TextStyle.Body),
                new Text("Bold words", new(130, 120), TextStyle.Body.Bold.Middle),
                new Text("Turned", new(180, 140), TextStyle.Note with { Rotation = -90 }),
                new Group([new Rectangle(new(-5, -5, 10, 10), Pen.Stop, new(DrawnRole.Stop, FillPattern.BackHatch))])
                {
                    Id = "pot-1",
                    Class = "pot",
                    Title = "Pot 1",
                    Description = "First pot",
                    Offset = new(60, 150),
                    Rotation = 30,
                    Clip = [new(-6, -6), new(6, -6), new(6, 2), new(-6, 2)],
                },
            ]
        )
        {
            Description = "All kinds of elements.",
        };
}
