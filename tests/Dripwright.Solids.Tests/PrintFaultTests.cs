using Dripwright.Engine.Numerics;
using Dripwright.Engine.Printed;

namespace Dripwright.Solids.Tests;

public sealed class PrintFaultTests
{
    private static readonly Vector3 s_x = new(1, 0, 0);

    public static TheoryData<PrintedKind, string, PrintParameters> Wrong =>
        new()
        {
            {
                PrintedKind.Foot,
                "TubeOutside",
                new() { TubeOutside = 25.4 }
            }, // mm taken for m
            {
                PrintedKind.Foot,
                "TubeOutside",
                new() { TubeOutside = double.NaN }
            },
            {
                PrintedKind.Foot,
                "Clearance",
                new() { Clearance = 0.02 }
            },
            {
                PrintedKind.Foot,
                "SocketDepth",
                new() { SocketDepth = 0.002 }
            },
            {
                PrintedKind.DrainHanger,
                "PipeOutside",
                new() { PipeOutside = 0 }
            },
            {
                PrintedKind.DrainHanger,
                "HangerReach",
                new() { HangerReach = 0.04 }
            }, // the pipe would run through the leg
            {
                PrintedKind.DrainHanger,
                "HangerReach",
                new() { HangerReach = 0.4 }
            },
            {
                PrintedKind.DrainHanger,
                "HangerLoad",
                new() { HangerLoad = 2000 }
            },
            {
                PrintedKind.DrainHanger,
                "HangerLoad",
                new() { HangerLoad = double.NaN }
            },
            {
                PrintedKind.HoseClip,
                "HoseOutside",
                new() { HoseOutside = -0.016 }
            },
            {
                PrintedKind.DrillGuide,
                "HolePitch",
                new() { HolePitch = 0.01 }
            },
            {
                PrintedKind.DrillGuide,
                "PilotDrill",
                new() { PilotDrill = 0.032 }
            }, // the hole saw's size
            {
                PrintedKind.StakeHolder,
                "StakeDiameter",
                new() { StakeDiameter = 0.05 }
            },
            {
                PrintedKind.StakeHolder,
                "RimThickness",
                new() { RimThickness = double.PositiveInfinity }
            },
            {
                PrintedKind.Tee,
                "Printer.Nozzle",
                new() { Printer = new() { Nozzle = 0.4 } }
            },
            {
                PrintedKind.Tee,
                "Printer.Layer",
                new() { Printer = new() { Layer = 0.0004 } }
            },
            {
                PrintedKind.Tee,
                "Printer.BedWidth",
                new() { Printer = new() { BedWidth = 0 } }
            },
            {
                PrintedKind.Tee,
                "Load.Moment",
                new() { Load = new(-1, 300) }
            },
            {
                PrintedKind.Tee,
                "Load.Temperature",
                new() { Load = new(1, 35) }
            }, // °C taken for K
            {
                PrintedKind.Tee,
                "Number",
                new() { Number = "a/b" }
            },
            {
                PrintedKind.Tee,
                "Number",
                new() { Number = "A LONG STORY ABOUT 1 TUBE" }
            },
            {
                PrintedKind.Tee,
                "JointCentre",
                new() { JointCentre = 0.005 }
            },
            {
                PrintedKind.Tee,
                "Sockets",
                new() { Sockets = [] }
            },
            {
                PrintedKind.Tee,
                "Sockets",
                new() { Sockets = [s_x, default] }
            },
            {
                PrintedKind.Tee,
                "Sockets",
                new() { Sockets = [s_x, -s_x] }
            }, // a coupler's
            {
                PrintedKind.Joint,
                "Sockets",
                new() { Sockets = [s_x, new(1, 0, 0.2), Vector3.Up] }
            }, // 11° apart
            {
                PrintedKind.Corner,
                "Load",
                new() { Load = new(500, 300) }
            },
            {
                PrintedKind.Corner,
                "Load",
                new() { Load = new(5, 330), Plastic = Plastic.Pla }
            }, // softer than it is hot
        };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void A_wrong_parameter_gives_one_fault_that_names_it(
        PrintedKind kind,
        string field,
        PrintParameters parameters
    )
    {
        var fault = Assert.Single(PrintDesigner.Check(kind, parameters));

        Assert.Equal(field, fault.Field);
        Assert.All([fault.Found, fault.Expected, fault.Remedy], text => Assert.NotEmpty(text.Told()));
        Assert.Equal(fault, Assert.Throws<PrintException>(() => PrintDesigner.For(kind, parameters)).Fault);
    }

    [Fact]
    public void Several_wrong_parameters_are_all_told() =>
        Assert.Equal(
            ["TubeOutside", "Number"],
            PrintDesigner.Check(PrintedKind.Tee, new() { TubeOutside = 1, Number = "?" }).Select(f => f.Field)
        );
}
