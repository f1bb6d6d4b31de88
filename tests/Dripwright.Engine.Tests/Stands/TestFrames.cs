using CsCheck;
using Dripwright.Engine.Numerics;
using Dripwright.Engine.Stands.Frame;
using Dripwright.Engine.Stands.Sections;

namespace Dripwright.Engine.Tests.Stands;

/// <summary>Frames to check laws on.</summary>
internal static class TestFrames
{
    public static Steel Steel { get; } = Steels.Weakest;

    public static TubeSection Tube { get; } = TubeSection.OfRoundTube(0.0254, 0.001651);

    /// <summary>Crooked tables of one to four bays with loads everywhere.</summary>
    public static Gen<(FrameModel Model, FrameLoading Loading)> Any { get; } =
        from seed in Gen.Int[0, 1 << 30]
        select Draw(new Random(seed));

    /// <summary>Bays along x; nodes run frame by frame: foot front, foot back, top front, top back.</summary>
    public static FrameModel Table(
        int bays,
        double bay,
        double depth,
        double height,
        SectionProperties section,
        EndStiffness joint,
        Held feet = Held.Fixed,
        bool lifts = false,
        Random? crooked = null
    )
    {
        List<FrameNode> nodes = [];
        List<FrameElement> elements = [];
        double off() => crooked is null ? 0 : 0.1 * (crooked.NextDouble() - 0.5);
        void Add(string name, int from, int to, EndStiffness start) =>
            elements.Add(new FrameElement(name, from, to, section, Steel, start, joint));
        for (var i = 0; i <= bays; i++)
        {
            var n = 4 * i;
            for (var k = 0; k < 4; k++)
            {
                var foot = k < 2;
                var at = new Vector3((i * bay) + off(), (k % 2 * depth) + off(), foot ? 0 : height + off());
                var name = (foot ? "foot " : "top ") + (k % 2 == 0 ? "front" : "back");
                nodes.Add(new FrameNode(name, at, foot ? feet : Held.None, foot && lifts));
            }

            Add("leg", n, n + 2, EndStiffness.Rigid);
            Add("leg", n + 1, n + 3, EndStiffness.Rigid);
            Add("cross", n + 2, n + 3, joint);
            if (i > 0)
            {
                Add("rail", n - 2, n + 2, joint);
                Add("rail", n - 1, n + 3, joint);
            }
        }

        return new FrameModel(nodes, elements);
    }

    private static (FrameModel, FrameLoading) Draw(Random random)
    {
        double any() => (2 * random.NextDouble()) - 1;
        Vector3 vector(double size) => new(size * any(), size * any(), size * any());
        var joint = new EndStiffness(Math.Pow(10, 2 + (3 * random.NextDouble())), 50 * random.Next(2));
        var tube =
            random.Next(2) == 0
                ? TubeSection.OfRoundTube(0.02 + (0.02 * random.NextDouble()), 0.0015)
                : TubeSection.OfRectangularTube(0.02, 0.03, 0.0015);
        var model = Table(
            random.Next(1, 5),
            0.5 + random.NextDouble(),
            0.2 + random.NextDouble(),
            0.4 + random.NextDouble(),
            tube.Properties,
            joint,
            crooked: random
        );
        var loading = new FrameLoading
        {
            Nodes =
            [
                .. Enumerable
                    .Range(0, 4)
                    .Select(_ => new NodeLoad(random.Next(model.Nodes.Count), vector(50), vector(5))),
            ],
            Points =
            [
                .. Enumerable
                    .Range(0, 4)
                    .Select(_ =>
                    {
                        var e = random.Next(model.Elements.Count);
                        return new PointLoad(e, model.LengthOf(e) * random.NextDouble(), vector(100));
                    }),
            ],
            Lines = [.. Enumerable.Range(0, model.Elements.Count).Select(e => new LineLoad(e, vector(20)))],
        };
        return (model, loading);
    }
}
