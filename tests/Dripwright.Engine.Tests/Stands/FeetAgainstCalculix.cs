using System.Globalization;
using System.Text;
using Dripwright.Engine.Numerics;
using Dripwright.Engine.Stands.Frame;

namespace Dripwright.Engine.Tests.Stands;

/// <summary>Feet that slip and lift: our stands on the contact of a general finite-element program, the ccx command.</summary>
/// <remarks>
/// Each foot's node rides on a plate by node-to-face contact with friction. Both take weights on the joints first and a push
/// after them in steps, all in first order; two meshes are carried on to none (Richardson). Its contact is a spring of 10⁶ N/mm, a thousand times a leg's own.
/// </remarks>
public sealed class FeetAgainstCalculix(ITestOutputHelper output)
{
    private const int Coarse = 6;
    private const double Friction = 0.3;
    private const double Tolerance = 0.02;

    [Theory]
    [InlineData("one module", true, 30, 0, 30)]
    [InlineData("staggered, one module", false, 60, 0, 20)]
    [InlineData("ten pots", true, 30, 0, 30)]
    public void What_the_floor_puts_on_feet_and_how_far_they_slip_are_those_of_ccx(
        string which,
        bool ofTube,
        double light,
        double along,
        double across
    )
    {
        Assert.SkipUnless(Calculix.Installed, Calculix.Missing);
        var model = Calculix.Firm(Calculix.Stand(which, 1), true, ofTube, true);
        int[] joints =
        [
            .. Enumerable
                .Range(0, model.Nodes.Count)
                .Where(n => model.Nodes[n].Name.StartsWith("joint ", StringComparison.Ordinal)),
        ];
        // Half of it is nearly empty, and pushed.
        var middle = joints.Average(n => model.Nodes[n].At.X);
        FrameLoading weight = new()
        {
            Nodes =
            [
                .. joints.Select(
                    (n, i) => new NodeLoad(n, new Vector3(0, 0, model.Nodes[n].At.X < middle ? -light : -150 - (5 * i)))
                ),
            ],
        };
        FrameLoading push = new()
        {
            Nodes =
            [
                .. joints
                    .Where(n => model.Nodes[n].At.X < middle)
                    .Select(n => new NodeLoad(n, new Vector3(along, across, 0))),
            ],
        };

        var ours = Assert.IsType<FrameSolution>(
            new FrameSolver(model).Solve(weight.And(push), new FrameOptions { Friction = Friction }, weight)
        );
        var coarse = Solve(model, weight, push, ofTube, Coarse);
        var fine = Solve(model, weight, push, ofTube, 2 * Coarse);

        int[] feet = [.. Enumerable.Range(0, model.Nodes.Count).Where(n => model.Nodes[n].Lifts)];
        var size = feet.Max(n => ours.Reaction(n).Force.Length);
        var far = feet.Max(n => ours.Shift(n).Length);
        Assert.Contains(ours.FootShifts, f => f.Motion == FootMotion.Slips);
        Assert.Equal(ofTube, ours.Lifted.Count > 0);
        for (var i = 0; i < feet.Length; i++)
        {
            var force = (2 * fine[i].Force) - coarse[i].Force;
            var shift = (2 * fine[i].Shift) - coarse[i].Shift;
            var (wrong, off) = (
                (force - ours.Reaction(feet[i]).Force).Length / size,
                (shift - ours.Shift(feet[i])).Length / far
            );
            var told = FormattableString.Invariant(
                $"{model.Nodes[feet[i]].Name}: {wrong:P2} of {size:F0} N, {off:P2} of {1e3 * far:F2} mm"
            );
            output.WriteLine(told);
            Assert.True(wrong <= Tolerance && off <= Tolerance, told);
        }
    }

    private static (Vector3 Force, Vector3 Shift)[] Solve(
        FrameModel model,
        FrameLoading weight,
        FrameLoading push,
        bool ofTube,
        int parts
    )
    {
        var folder = Directory.CreateTempSubdirectory("feet").FullName;
        try
        {
            int[] feet = [.. Enumerable.Range(0, model.Nodes.Count).Where(n => model.Nodes[n].Lifts)];
            var deck = new StringBuilder(Calculix.Deck(model, parts, ofTube));
            Plates(deck, model, feet);
            deck.Append(CultureInfo.InvariantCulture, $"*STEP\n*STATIC\n1, 1\n{Calculix.Cloads(weight)}*END STEP\n");
            deck.Append(
                CultureInfo.InvariantCulture,
                $"*STEP, INC=1000\n*STATIC\n0.25, 1, 1e-6, 0.25\n{Calculix.Cloads(weight.And(push))}"
            );
            deck.Append("*NODE PRINT, NSET=NALL, FREQUENCY=1000\nU\n");
            foreach (var foot in feet)
            {
                deck.Append(
                    CultureInfo.InvariantCulture,
                    $"*NODE PRINT, NSET=PLATE{foot}, TOTALS=ONLY, FREQUENCY=1000\nRF\n"
                );
            }

            var text = Calculix.Run(folder, "feet", deck.Append("*END STEP\n").ToString());
            var shifts = Calculix.Shifts(text, model.Nodes.Count);
            var lines = text.Split('\n');
            return
            [
                .. feet.Select(foot =>
                {
                    var title = Array.FindIndex(
                        lines,
                        l => l.Contains($"for set PLATE{foot} ", StringComparison.Ordinal)
                    );
                    var words = lines[title + 2].Split(' ', StringSplitOptions.RemoveEmptyEntries);
                    // What holds the plate is what the foot gets from it.
                    return (
                        new Vector3(Calculix.Number(words[0]), Calculix.Number(words[1]), Calculix.Number(words[2])),
                        shifts[foot]
                    );
                }),
            ];
        }
        finally
        {
            Directory.Delete(folder, true);
        }
    }

    // A held block of 200 mm under each foot, and on it a node that goes where the foot goes.
    private static void Plates(StringBuilder deck, FrameModel model, int[] feet)
    {
        const int First = 20_000; // beyond the deck's own; it reserves room for every number below
        var pairs = new StringBuilder();
        var held = new StringBuilder("*BOUNDARY\n");
        foreach (var foot in feet)
        {
            var at = 1000 * model.Nodes[foot].At;
            var number = First + (10 * foot);
            deck.Append(CultureInfo.InvariantCulture, $"*NODE, NSET=PLATE{foot}\n");
            (int X, int Y)[] corners = [(-1, -1), (1, -1), (1, 1), (-1, 1)];
            for (var k = 0; k < 8; k++)
            {
                var (x, y) = corners[k % 4];
                deck.Append(
                    CultureInfo.InvariantCulture,
                    $"{number + k}, {at.X + (100 * x):R}, {at.Y + (100 * y):R}, {at.Z - (k < 4 ? 0 : 50):R}\n"
                );
            }

            deck.Append(
                CultureInfo.InvariantCulture,
                $"*NODE, NSET=SOLE{foot}\n{number + 8}, {at.X:R}, {at.Y:R}, {at.Z:R}\n*ELEMENT, TYPE=C3D8, ELSET=BLOCK{foot}\n{number}, {number + 4}, {number + 5}, {number + 6}, {number + 7}, {number}, {number + 1}, {number + 2}, {number + 3}\n*SOLID SECTION, ELSET=BLOCK{foot}, MATERIAL=STEEL\n"
            );
            for (var row = 1; row <= 3; row++)
            {
                deck.Append(
                    CultureInfo.InvariantCulture,
                    $"*EQUATION\n2\n{number + 8}, {row}, 1, {foot + 1}, {row}, -1\n"
                );
            }

            pairs.Append(
                CultureInfo.InvariantCulture,
                $"*SURFACE, NAME=SOLES{foot}, TYPE=NODE\nSOLE{foot}\n*SURFACE, NAME=TOP{foot}\n{number}, S2\n*CONTACT PAIR, INTERACTION=FLOOR, TYPE=NODE TO SURFACE\nSOLES{foot}, TOP{foot}\n"
            );
            held.Append(CultureInfo.InvariantCulture, $"PLATE{foot}, 1, 3\n");
        }

        deck.Append(
            CultureInfo.InvariantCulture,
            $"*SURFACE INTERACTION, NAME=FLOOR\n*SURFACE BEHAVIOR, PRESSURE-OVERCLOSURE=LINEAR\n1e6, 1e-3\n*FRICTION\n{Friction}, 1e6\n{pairs}{held}"
        );
    }
}
