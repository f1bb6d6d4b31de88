using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using Dripwright.Engine.Numerics;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Stands;
using Dripwright.Engine.Stands.Frame;
using Dripwright.Engine.Stands.Sections;
using Dripwright.Engine.Tests.Layout;

namespace Dripwright.Engine.Tests.Stands;

/// <summary>Our stands written for the ccx command, and what it answers.</summary>
internal static class Calculix
{
    public const string Missing = "The ccx command (Debian package calculix-ccx) is not installed.";
    private const double BarSide = 0.01; // m

    public static bool Installed { get; } = Has();

    public static FrameModel Stand(string which, int divisions)
    {
        var rig = TestRigs.TenPots;
        (Rig Rig, StandOptions Options) chosen = which switch
        {
            "ten pots" => (rig, new StandOptions()),
            "one module with braces" => (rig.WithPots(5), new StandOptions { Bracing = Bracing.Both }),
            "one module" => (rig.WithPots(5), new StandOptions()),
            "staggered, one module" => (
                rig.WithRow(r => r with { Arrangement = Arrangement.Staggered, Pots = 4 }),
                new StandOptions()
            ),
            _ => (rig.WithRow(r => r with { Arrangement = Arrangement.Staggered, Pots = 8 }), new StandOptions()),
        };
        return StandFrame.Of(TestRigs.Layout(chosen.Rig), chosen.Options with { Divisions = divisions })[0].Model;
    }

    // Its beams know no springs in their ends, so all joints are firm; feet are held in everything or only stand.
    public static FrameModel Firm(FrameModel model, bool shear, bool ofTube, bool feetStand = false) =>
        new(
            feetStand
                ? model.Nodes
                : [.. model.Nodes.Select(n => n with { Held = n.Lifts ? Held.Fixed : n.Held, Lifts = false })],
            [
                .. model.Elements.Select(e =>
                    e with
                    {
                        Section = WithShear(ofTube ? e.Section : s_bar, shear),
                        Steel = s_steel,
                        Start = EndStiffness.Rigid,
                        End = EndStiffness.Rigid,
                    }
                ),
            ]
        );

    private static SectionProperties WithShear(SectionProperties section, bool shear) =>
        shear ? section : section.WithoutShear();

    // Shear area 10(1+v)/(12+11v) of the area (Cowper 1966, from memory). Torsion: its beams are one solid element wide, which
    // cannot warp, so they twist with the polar moment a^4/6 and not with the true 0.1406 a^4: seen on a right angle of
    // two bars. A round tube does not warp.
    private static readonly SectionProperties s_bar = new(
        Math.Pow(BarSide, 2),
        Math.Pow(BarSide, 4) / 12,
        Math.Pow(BarSide, 4) / 12,
        Math.Pow(BarSide, 3) / 6,
        Math.Pow(BarSide, 3) / 6,
        Math.Pow(BarSide, 4) / 6,
        13 / 15.3 * Math.Pow(BarSide, 2),
        13 / 15.3 * Math.Pow(BarSide, 2),
        false
    );

    private static readonly Steel s_steel = new("test", "test", 2e8, 3e8, false, "test")
    {
        Young = 200e9,
        Shear = 200e9 / 2.6,
    };

    public static string Cloads(FrameLoading loading)
    {
        var loads = new StringBuilder("*CLOAD\n");
        foreach (var load in loading.Nodes)
        {
            var node = load.Node + 1;
            loads.Append(
                CultureInfo.InvariantCulture,
                $"{node}, 1, {load.Force.X}\n{node}, 2, {load.Force.Y}\n{node}, 3, {load.Force.Z}\n"
            );
        }

        return loads.ToString();
    }

    // Newtons and millimetres. A round tube of the test section: outer radius 12.7 mm, wall 1.651 mm.
    public static string Deck(FrameModel model, int parts, bool ofTube)
    {
        var nodes = new StringBuilder("*NODE, NSET=NALL\n");
        void Node(int number, double x, double y, double z) =>
            nodes.Append(CultureInfo.InvariantCulture, $"{number}, {1000 * x:R}, {1000 * y:R}, {1000 * z:R}\n");
        var rest = new StringBuilder();
        var sections = new StringBuilder("*MATERIAL, NAME=STEEL\n*ELASTIC\n200000, 0.3\n");
        var held = new StringBuilder("*BOUNDARY\n");
        for (var n = 0; n < model.Nodes.Count; n++)
        {
            var node = model.Nodes[n];
            Node(n + 1, node.At.X, node.At.Y, node.At.Z);
            if (node.Held == Held.Fixed)
            {
                held.Append(CultureInfo.InvariantCulture, $"{n + 1}, 1, 6\n");
            }
            else if (node.Lifts)
            {
                // What presses, slips and lifts is added by who asks for it.
                held.Append(CultureInfo.InvariantCulture, $"{n + 1}, 6, 6\n");
            }
        }

        var next = model.Nodes.Count;
        var number = 0;
        var section = ofTube
            ? "PIPE\n12.7, 1.651"
            : FormattableString.Invariant($"RECT\n{1000 * BarSide}, {1000 * BarSide}");
        for (var e = 0; e < model.Elements.Count; e++)
        {
            var element = model.Elements[e];
            var a = model.Nodes[element.From].At;
            var b = model.Nodes[element.To].At;
            rest.Append(CultureInfo.InvariantCulture, $"*ELEMENT, TYPE=B32R, ELSET=M{e}\n");
            var from = element.From + 1;
            for (var k = 1; k <= parts; k++)
            {
                var middle = Between((k - 0.5) / parts);
                var to = k == parts ? element.To + 1 : Between((double)k / parts);
                rest.Append(CultureInfo.InvariantCulture, $"{++number}, {from}, {middle}, {to}\n");
                from = to;
            }

            // Any direction across a round tube will do.
            var upright = Math.Abs(b.Z - a.Z) > 0.9 * a.DistanceTo(b);
            sections.Append(
                CultureInfo.InvariantCulture,
                $"*BEAM SECTION, ELSET=M{e}, MATERIAL=STEEL, SECTION={section}\n"
            );
            sections.Append(upright ? "0., 1., 0.\n" : "0., 0., 1.\n");

            int Between(double share)
            {
                Node(++next, a.X + (share * (b.X - a.X)), a.Y + (share * (b.Y - a.Y)), a.Z + (share * (b.Z - a.Z)));
                return next;
            }
        }

        return $"{nodes}{rest}{sections}{held}";
    }

    public static Vector3[] Shifts(string text, int count)
    {
        var shifts = new Vector3[count];
        foreach (var line in text.Split('\n'))
        {
            var words = line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
            if (
                words.Length == 4
                && int.TryParse(words[0], CultureInfo.InvariantCulture, out var node)
                && node <= count
            )
            {
                shifts[node - 1] = 1e-3 * new Vector3(Number(words[1]), Number(words[2]), Number(words[3]));
            }
        }

        return shifts;
    }

    public static double Number(string word) => double.Parse(word, CultureInfo.InvariantCulture);

    public static string Run(string folder, string name, string deck)
    {
        File.WriteAllText(Path.Combine(folder, name + ".inp"), deck);
        Start(folder, name);
        return File.ReadAllText(Path.Combine(folder, name + ".dat"));
    }

    private static bool Has()
    {
        try
        {
            Start(Path.GetTempPath(), "-v");
            return true;
        }
        catch (Win32Exception)
        {
            return false;
        }
    }

    private static void Start(string folder, string argument)
    {
        using var process = Process.Start(
            new ProcessStartInfo("ccx", argument)
            {
                UseShellExecute = false,
                RedirectStandardOutput = true,
                WorkingDirectory = folder,
            }
        )!;
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
    }
}
