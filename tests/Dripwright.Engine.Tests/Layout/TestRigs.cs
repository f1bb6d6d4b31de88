using CsCheck;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;
using static System.FormattableString;

namespace Dripwright.Engine.Tests.Layout;

/// <summary>Rigs written by hand, with the values a rig file would get by default.</summary>
internal static class TestRigs
{
    private const double Inch = 0.0254;
    private const double Foot = 0.3048;

    public static Row TenFootRow { get; } =
        new()
        {
            Count = 1,
            Pots = 10,
            Pot = "pot-square-3-gal",
            Spacing = Foot,
            LineDistance = 14 * Inch,
            ModuleLength = 5 * Foot,
            StandHeight = 24 * Inch,
            Aisle = 30 * Inch,
        };

    /// <summary>The ten-foot row of ten pots, all in US sizes.</summary>
    public static Rig TenPots { get; } =
        new()
        {
            Name = "Ten pots",
            Site = new Site
            {
                RoomLength = 20 * Foot,
                RoomWidth = 12 * Foot,
                RoomHeight = 8 * Foot,
                Voltage = 120,
                Frequency = 60,
                Breaker = 15,
                OutletHeight = 3 * Foot,
                OutletDistance = 4 * Foot,
            },
            Rows = [TenFootRow],
            Stand = new Stand
            {
                Tube = "tube-round-1in-16ga",
                LowTies = true,
                SocketDepth = 1.5 * Inch,
                JointCentre = 0.75 * Inch,
            },
            CropWire = new CropWire(),
            Feed = new Feed
            {
                Line = "hose-1/2",
                EmittersPerPot = 2,
                Emitter = "drip-turbulent-1gph",
                EmittersAtEmptyPots = true,
                ValveOpen = 1,
                MicrotubeLength = 10 * Inch,
                MicrotubeBore = 0.165 * Inch,
                Strainer = "strainer-150-mesh",
                Header = new Header { Pipe = "hose-3/4", Elbows = 2 },
            },
            Drain = new Drain
            {
                Pipe = "pvc40-1-1/2",
                Slope = 0.25 / 12,
                Outlet = "outlet-3/4",
                BelowPots = Inch,
                Vent = true,
            },
            Reservoir = new Reservoir
            {
                Tank = "tank-box-35-gal",
                Lid = true,
                Fill = 0.75,
                LowestLevel = 3 * Inch,
                Gap = 6 * Inch,
                WaterTemperature = 293.15,
                DaysWanted = 3 * 86400,
            },
            Pump = new Pump { Model = "pump-400gph", CordSide = Side.Back },
            Timer = new Dripwright.Engine.Rigs.Timer
            {
                Mode = TimerMode.Cycle,
                On = 900,
                Off = 2700,
                HoursPerDay = 14 * 3600,
            },
            Spares = new Spares
            {
                Emitters = 0.1,
                Seals = 0.2,
                Fittings = 0.1,
                Pumps = 1,
                Tube = 3 * Foot,
            },
        };

    /// <summary>Rigs of every make that hold together physically, in both unit systems.</summary>
    public static Gen<Rig> Any { get; } = from seed in Gen.Int[0, 1 << 30] select Draw(new Random(seed));

    public static RigLayout Layout(Rig rig) => RigLayout.Of(ResolvedRig.Of(rig, PartsCatalogue.Default));

    public static Rig WithRow(this Rig rig, Func<Row, Row> change) => rig with { Rows = [change(rig.Rows[0])] };

    public static Rig WithPots(this Rig rig, int pots) => rig.WithRow(r => r with { Pots = pots });

    private static Rig Draw(Random random)
    {
        T One<T>(params T[] choices) => choices[random.Next(choices.Length)];
        double Between(double low, double high) => low + (random.NextDouble() * (high - low));
        bool Coin() => random.Next(2) == 0;
        var us = Coin();
        Row RowOf()
        {
            var pot = us ? One("pot-square-3-gal", "pot-round-5-gal") : One("pot-square-11-l", "pot-round-19-l");
            var pots = random.Next(1, random.Next(5) == 0 ? 120 : 20);
            return new Row
            {
                Count = random.Next(1, 3),
                Pots = pots,
                Pot = pot,
                Spacing = Between(0.25, 0.6),
                Arrangement = One(Arrangement.Single, Arrangement.Staggered),
                LineDistance = Between(0.3, 0.5),
                ModuleLength = Between(0.9, 2),
                StandHeight = One(0, 0.03, Between(0.2, 1)),
                FloorLevel = Between(-0.3, 0.3),
                DrainSide = One(Side.Front, Side.Back, Side.Middle),
                Aisle = Between(0.3, 1),
                Planting =
                    One(0, 1, 2) == 0
                        ? null
                        :
                        [
                            new Planting
                            {
                                Pots = Invariant($"1-{Math.Max(1, pots / 2)}"),
                                Crop = "tomato",
                                Plants = 1,
                                Emitters = One<int?>(null, 1, 4),
                            },
                        ],
            };
        }

        var start = TenPots;
        return start with
        {
            Units = us ? UnitSystem.Us : UnitSystem.Metric,
            Rows = [.. Enumerable.Range(0, random.Next(1, 4)).Select(_ => RowOf())],
            Stand = start.Stand with { Tube = us ? "emt-3/4" : "tube-square-25x1.5", LowTies = Coin() },
            Feed = start.Feed with
            {
                Entry = One(FeedEntry.End, FeedEntry.Middle, FeedEntry.BothEnds, FeedEntry.Loop),
                Line = us ? One("hose-1/2", "pvc40-1/2") : One("hose-16mm", "pvcu-20mm"),
                EmittersPerPot = random.Next(1, 4),
                Emitter = us ? "drip-pc-1gph" : "drip-turbulent-4lph",
                EmittersAtEmptyPots = Coin(),
                InlineValves = Coin(),
                ValveOpen = Between(0, 1),
                MicrotubeLength = One(0, Between(0.1, 0.6)),
                MicrotubeBore = us ? 0.165 * Inch : 0.004,
                Strainer = One("none", "strainer-150-mesh", "mesh-bag-200-um"),
                Header = new Header
                {
                    Pipe = us ? One("hose-3/4", "pvc40-1") : One("hose-20mm", "pvcu-32mm"),
                    Elbows = random.Next(0, 5),
                    Run = One<double?>(null, Between(0, 4)),
                    Rise = One<double?>(null, Between(0, 2)),
                },
                CheckValve = Coin(),
                Throttle = One<double?>(null, 0.5),
                Bypass = One<double?>(null, 0.5),
            },
            Drain = start.Drain with
            {
                Pipe = us ? One("pvc40-1-1/2", "pvc40-3") : One("pvcu-50mm", "pvcu-75mm"),
                Outlet = us ? "outlet-3/4" : "outlet-20mm",
                Slope = One(0, Between(0, 0.05)),
                Exit = One(DrainExit.End, DrainExit.Middle),
                BelowPots = Between(0, 0.1),
                Vent = Coin(),
            },
            Reservoir = start.Reservoir with
            {
                Tank = us ? "tank-box-50-gal" : "tank-drum-210-l",
                Base = Between(-0.5, 0.5),
                At = One(RowEnd.Left, RowEnd.Right),
                Gap = Between(-1.5, 1),
            },
            Pump = start.Pump with { Model = One("none", "pump-400gph", "pump-1500lph") },
            Spares = start.Spares with
            {
                Emitters = Between(0, 0.5),
                Seals = Between(0, 0.5),
                Fittings = Between(0, 0.5),
                Tube = Between(0, 3),
                Timers = random.Next(0, 2),
            },
            Printing = start.Printing with
            {
                SmallParts = new()
                {
                    LineRests = Coin(),
                    HoseClips = Coin(),
                    HoseClamp = Coin(),
                    StakeHolders = Coin(),
                    DrillGuides = Coin(),
                    Couplers = One(0, 0, 3),
                },
            },
        };
    }
}
