using CsCheck;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Catalogue.Targets;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;
using static System.FormattableString;

namespace Dripwright.Engine.Tests.Rigs;

/// <summary>Random valid rigs, every choice and every optional part among them, for the property tests of all stages.</summary>
/// <remarks>Valid is not sensible: pumps too weak and drains too level are wanted. Sizes stay within what a garden has.</remarks>
public static class RigGen
{
    private static readonly PartsCatalogue s_parts = PartsCatalogue.Default;

    private static Gen<string> Key<T>(IReadOnlyDictionary<string, T> shelf) =>
        Gen.OneOf<string>([.. shelf.Keys.Order(StringComparer.Ordinal)]);

    // In millionths of the range: the library's own doubles come as small as 10⁻⁹⁰, which no rig file may hold.
    private static Gen<double> Between(Dimension dimension, string min, string max)
    {
        var (least, most) = (QuantityText.Parse(dimension, min), QuantityText.Parse(dimension, max));
        return Gen.Frequency<double>(
            (1, Gen.Const(least)),
            (1, Gen.Const(most)),
            (6, Gen.Int[0, 1_000_000].Select(millionths => Clean(least + ((most - least) * millionths / 1e6), most)))
        );
    }

    // What rounding leaves of a zero is a zero.
    private static double Clean(double value, double most) => Math.Abs(value) < 1e-12 * most ? 0 : value;

    private static Gen<double> Length(string min, string max) => Between(Dimension.Length, min, max);

    private static readonly Gen<double> s_share = Between(Dimension.Share, "0 %", "100 %");

    private static Gen<T?> Maybe<T>(Gen<T> gen)
        where T : struct => Gen.Bool.SelectMany(given => given ? gen.Select(value => (T?)value) : Gen.Const((T?)null));

    private static readonly Gen<string> s_name = Gen.String[Gen.Char["abc ÄßЖ漢🌱\"\\/'<&-9"], 0, 20]
        .Select(text => string.Concat(text.Where(letter => !char.IsSurrogate(letter))));

    /// <summary>Plantings of a row: cuts the pots into runs and plants some of them.</summary>
    private static Gen<IReadOnlyList<Planting>?> Plantings(int pots)
    {
        var entry = Gen.Select(
            Gen.Int[1, 6],
            Gen.Int[0, 3],
            Gen.OneOf("tomato", "cucumber", "pepper", "salad"),
            Gen.Int[1, 3],
            Maybe(Gen.Int[1, 4]),
            Maybe(s_share)
        );
        var runs = entry
            .Array[0, 8]
            .Select(entries =>
            {
                var planted = new List<Planting>();
                var next = 1;
                foreach (var (length, gap, crop, plants, emitters, open) in entries)
                {
                    var first = next + gap;
                    var last = Math.Min(pots, first + length - 1);
                    if (first > pots)
                    {
                        break;
                    }
                    planted.Add(
                        new Planting
                        {
                            Pots =
                                first == last
                                    ? FormattableString.Invariant($"{first}")
                                    : FormattableString.Invariant($"{first}-{last}"),
                            Crop = crop,
                            Plants = plants,
                            Emitters = emitters,
                            ValveOpen = open,
                        }
                    );
                    next = last + 1;
                }
                return (IReadOnlyList<Planting>?)planted;
            });
        return Gen.Frequency<IReadOnlyList<Planting>?>((1, Gen.Const((IReadOnlyList<Planting>?)null)), (3, runs));
    }

    private static readonly Gen<Row> s_row = Gen.Select(
            Gen.Select(Gen.Int[1, 2], Gen.Int[1, 40], Key(s_parts.Pots), Length("5 in", "30 in")),
            Gen.Select(Gen.Enum<Arrangement>(), Length("6 in", "30 in"), Length("3 ft", "8 ft"), Maybe(Gen.Int[1, 40])),
            Gen.Select(Length("6 in", "5 ft"), Length("-2 ft", "4 ft"), Gen.Enum<Side>(), Length("0 in", "6 ft"))
        )
        .SelectMany(
            (what, how, where) =>
                Plantings(what.Item2)
                    .Select(planting => new Row
                    {
                        Count = what.Item1,
                        Pots = what.Item2,
                        Pot = what.Item3,
                        Spacing = what.Item4,
                        Arrangement = how.Item1,
                        LineDistance = how.Item2,
                        ModuleLength = how.Item3,
                        Modules = how.Item4,
                        StandHeight = where.Item1,
                        FloorLevel = where.Item2,
                        DrainSide = where.Item3,
                        Aisle = where.Item4,
                        Planting = planting,
                    })
        );

    private static readonly Gen<Site> s_site = Gen.Select(
        Gen.Select(s_name, Length("10 ft", "60 ft"), Length("8 ft", "40 ft"), Length("7 ft", "14 ft")),
        Gen.Select(
            Length("-100 ft", "9000 ft"),
            Gen.OneOf(12.0, 120.0, 230.0),
            Gen.OneOf(0.0, 50.0, 60.0),
            Gen.OneOf(10.0, 15.0, 16.0, 20.0)
        ),
        Gen.Select(Between(Dimension.Power, "0 W", "3 kW"), Length("0 in", "6 ft"), Length("0 ft", "20 ft")),
        (room, supply, socket) =>
            new Site
            {
                Name = room.Item1,
                RoomLength = room.Item2,
                RoomWidth = room.Item3,
                RoomHeight = room.Item4,
                Elevation = supply.Item1,
                Voltage = supply.Item2,
                Frequency = supply.Item3,
                Breaker = supply.Item4,
                OtherLoads = socket.Item1,
                OutletHeight = socket.Item2,
                OutletDistance = socket.Item3,
            }
    );

    private static readonly Gen<SmallPartsWanted> s_smallParts = Gen.Select(
        Gen.Bool.Array[5],
        Gen.Int[0, 500],
        Gen.Select(Length("0.5 mm", "10 mm"), Length("2 mm", "15 mm"), Length("1.5 mm", "10 mm")),
        (wanted, couplers, sizes) =>
            new SmallPartsWanted
            {
                LineRests = wanted[0],
                HoseClips = wanted[1],
                HoseClamp = wanted[2],
                StakeHolders = wanted[3],
                DrillGuides = wanted[4],
                Couplers = couplers,
                RimThickness = sizes.Item1,
                StakeDiameter = sizes.Item2,
                PilotDrill = sizes.Item3,
            }
    );

    private static readonly Gen<Printing> s_printing = Gen.Select(
        Gen.Select(Maybe(Length("10 mm", "50 mm")), Length("-0.4 mm", "0.9 mm"), Gen.Enum<PrintPlastic>()),
        Gen.Select(Length("0.2 mm", "1.2 mm"), Length("0.05 mm", "0.8 mm")),
        Gen.Select(Length("80 mm", "1000 mm"), Length("80 mm", "1000 mm"), Length("80 mm", "1000 mm")),
        Between(Dimension.Temperature, "32 F", "180 F"),
        s_smallParts,
        (tube, nozzle, bed, warmest, small) =>
            new Printing
            {
                TubeOutside = tube.Item1,
                Clearance = tube.Item2,
                Plastic = tube.Item3,
                Nozzle = nozzle.Item1,
                Layer = nozzle.Item2,
                BedWidth = bed.Item1,
                BedDepth = bed.Item2,
                BedHeight = bed.Item3,
                Warmest = warmest,
                SmallParts = small,
            }
    );

    private static readonly Gen<Stand> s_stand = Gen.Select(
        Key(s_parts.Tubes),
        Maybe(Length("6 in", "3 ft")),
        Gen.Bool,
        Gen.Select(Length("1/2 in", "3 in"), Length("0 in", "2 in")),
        Gen.Select(Gen.Enum<Bracing>(), Gen.Int[0, 2], Gen.Enum<TubeSteel>(), Gen.Bool),
        Gen.Select(Maybe(Between(Dimension.Force, "5 N", "90 N")), Maybe(Length("2 mm", "40 mm"))),
        (tube, depth, ties, joint, stiff, own) =>
            new Stand
            {
                Tube = tube,
                Depth = depth,
                LowTies = ties,
                SocketDepth = joint.Item1,
                JointCentre = joint.Item2,
                Bracing = stiff.Item1,
                ExtraFrames = stiff.Item2,
                Steel = stiff.Item3,
                Leaning = stiff.Item4,
                JointSlip = own.Item1,
                JointSink = own.Item2,
            }
    );

    private static readonly Gen<CropWire> s_cropWire = Gen.Select(
        Gen.Select(Gen.OneOf(Gen.Const("none"), Key(s_parts.Wires)), Length("2 ft", "12 ft"), Length("1 ft", "20 ft")),
        Gen.Select(Between(Dimension.Force, "1 lbf", "300 lbf"), Between(Dimension.Mass, "0 lb", "60 lb")),
        Gen.Select(Gen.Int[1, 4], Gen.Enum<Timber>(), Gen.Bool, Gen.Enum<WireEnds>()),
        Gen.Select(Length("1/4 in", "1 in"), Length("1/2 in", "4 in"), Maybe(Length("2 ft", "15 ft"))),
        (wire, load, strings, hook) =>
            new CropWire
            {
                Wire = wire.Item1,
                Height = wire.Item2,
                Supports = wire.Item3,
                Tightened = load.Item1,
                PlantMass = load.Item2,
                Strings = strings.Item1,
                Timber = strings.Item2,
                WetTimber = strings.Item3,
                Ends = strings.Item4,
                HookDiameter = hook.Item1,
                HookThread = hook.Item2,
                Lamps = hook.Item3,
            }
    );

    private static readonly Gen<Header> s_header = Gen.Select(
        Key(s_parts.Pipes),
        Maybe(Length("0 ft", "40 ft")),
        Maybe(Length("-2 ft", "8 ft")),
        Gen.Int[0, 8],
        (pipe, run, rise, elbows) =>
            new Header
            {
                Pipe = pipe,
                Run = run,
                Rise = rise,
                Elbows = elbows,
            }
    );

    private static readonly Gen<Feed> s_feed = Gen.Select(
        Gen.Select(Gen.Enum<FeedEntry>(), Key(s_parts.Pipes), Maybe(Length("-3 in", "3 ft")), Gen.Int[1, 4]),
        Gen.Select(Key(s_parts.Emitters), Gen.Bool, Gen.Bool, s_share),
        Gen.Select(Length("0 in", "2 ft"), Length("1 mm", "1/4 in"), Length("-1 ft", "1 ft"), Key(s_parts.Strainers)),
        Gen.Select(s_header, Gen.Bool, Gen.Bool, Maybe(s_share), Maybe(s_share)),
        (line, emitter, tube, supply) =>
            new Feed
            {
                Entry = line.Item1,
                Line = line.Item2,
                LineHeight = line.Item3,
                EmittersPerPot = line.Item4,
                Emitter = emitter.Item1,
                EmittersAtEmptyPots = emitter.Item2,
                InlineValves = emitter.Item3,
                ValveOpen = emitter.Item4,
                MicrotubeLength = tube.Item1,
                MicrotubeBore = tube.Item2,
                OutletHeight = tube.Item3,
                Strainer = tube.Item4,
                Header = supply.Item1,
                CheckValve = supply.Item2,
                SiphonBreak = supply.Item3,
                Throttle = supply.Item4,
                Bypass = supply.Item5,
            }
    );

    private static readonly Gen<Drain> s_drain = Gen.Select(
        Gen.Select(
            Key(s_parts.Pipes),
            Between(Dimension.Slope, "0 %", "6 %"),
            Gen.Enum<DrainExit>(),
            Key(s_parts.Outlets)
        ),
        Gen.Select(Length("0 in", "8 in"), Gen.Bool, Maybe(Length("-6 in", "2 ft")), Gen.Enum<DrainTarget>()),
        (pipe, fall) =>
            new Drain
            {
                Pipe = pipe.Item1,
                Slope = pipe.Item2,
                Exit = pipe.Item3,
                Outlet = pipe.Item4,
                BelowPots = fall.Item1,
                Vent = fall.Item2,
                Drop = fall.Item3,
                Into = fall.Item4,
            }
    );

    private static readonly Gen<Reservoir> s_reservoir = Gen.Select(
        Gen.Select(
            Key(s_parts.Tanks),
            Maybe(Gen.Enum<TankShape>()),
            Maybe(Length("1 ft", "5 ft")),
            Maybe(Length("8 in", "3 ft"))
        ),
        Gen.Select(
            Maybe(Length("6 in", "4 ft")),
            Maybe(Between(Dimension.Volume, "5 gal", "200 gal")),
            Gen.Bool,
            Between(Dimension.Share, "1 %", "100 %")
        ),
        Gen.Select(Length("0 in", "5 in"), Length("-1 ft", "6 ft"), Gen.Enum<RowEnd>(), Length("-5 ft", "10 ft")),
        Gen.Select(
            Between(Dimension.Temperature, "45 F", "95 F"),
            Between(Dimension.Flow, "0.1 L/day", "4 L/day"),
            Between(Dimension.Duration, "0 d", "14 d")
        ),
        (tank, fill, place, use) =>
            Round(
                new Reservoir
                {
                    Tank = tank.Item1,
                    Shape = tank.Item2,
                    Length = tank.Item3,
                    Width = tank.Item4,
                    Height = fill.Item1,
                    Volume = fill.Item2,
                    Lid = fill.Item3,
                    Fill = fill.Item4,
                    LowestLevel = place.Item1,
                    Base = place.Item2,
                    At = place.Item3,
                    Gap = place.Item4,
                    WaterTemperature = use.Item1,
                    UsePerPlant = use.Item2,
                    DaysWanted = use.Item3,
                }
            )
    );

    // A cylinder has one diameter: where the tank it is made of has another shape, that must be given.
    private static Reservoir Round(Reservoir reservoir)
    {
        var tank = s_parts.Tanks[reservoir.Tank];
        return (reservoir.Shape ?? tank.Shape) switch
        {
            TankShape.Upright when reservoir.Length is { } diameter => reservoir with { Width = diameter },
            TankShape.Upright when tank.Shape is not TankShape.Upright && reservoir.Width is null => reservoir with
            {
                Width = tank.Width,
            },
            TankShape.Lying when reservoir.Width is { } diameter => reservoir with { Height = diameter },
            TankShape.Lying when tank.Shape is not TankShape.Lying && reservoir.Height is null => reservoir with
            {
                Height = tank.Height,
            },
            _ => reservoir,
        };
    }

    private static readonly Gen<IReadOnlyList<LeafletPoint>> s_curve = Gen.Select(
            Between(Dimension.Flow, "10 gph", "300 gph"),
            Length("2 in", "4 ft"),
            (flow, head) => (flow, head)
        )
        .Array[1, 6]
        .Select(steps =>
        {
            var points = new List<LeafletPoint>();
            var (flow, head) = (0.0, steps.Sum(step => step.head));
            points.Add(new LeafletPoint { Flow = flow, Head = head });
            for (var i = 0; i < steps.Length; i++)
            {
                flow += steps[i].flow;
                head = i == steps.Length - 1 ? 0 : head - steps[i].head;
                points.Add(new LeafletPoint { Flow = flow, Head = head });
            }
            return (IReadOnlyList<LeafletPoint>)points;
        });

    private static readonly Gen<Pump> s_pump = Gen.Select(
        Gen.Select(Key(s_parts.Pumps), Gen.Enum<Side>(), Maybe(Length("0 in", "4 in"))),
        Gen.Select(Maybe(Between(Dimension.Power, "2 W", "500 W")), Maybe(Length("3 ft", "30 ft"))),
        Gen.Int[0, 5],
        s_curve,
        Gen.Select(Length("1 ft", "40 ft"), Between(Dimension.Flow, "30 gph", "2000 gph")),
        (pump, more, kind, curve, ends) =>
            new Pump
            {
                Model = kind == 0 ? "none" : pump.Item1,
                CordSide = pump.Item2,
                InletHeight = pump.Item3,
                Power = more.Item1,
                Cord = more.Item2,
                Curve = kind == 1 ? curve : null,
                ShutOffHead = kind == 2 ? ends.Item1 : null,
                OpenFlow = kind == 2 ? ends.Item2 : null,
            }
    );

    private static readonly Gen<Dripwright.Engine.Rigs.Timer> s_timer = Gen.Select(
        Gen.Enum<TimerMode>(),
        Between(Dimension.Duration, "30 s", "2 h"),
        Between(Dimension.Duration, "0 s", "4 h"),
        Between(Dimension.Duration, "1 h", "24 h"),
        (mode, on, off, hours) =>
            new Dripwright.Engine.Rigs.Timer
            {
                Mode = mode,
                On = on,
                Off = off,
                HoursPerDay = hours,
            }
    );

    private static readonly Gen<OnHand> s_onHand = Gen.OneOf(
        Gen.Select(
            Gen.OneOf(Key(s_parts.Pipes), Key(s_parts.Tubes)),
            Gen.Int[1, 9],
            Length("6 in", "20 ft"),
            (part, count, length) =>
                new OnHand
                {
                    Part = part,
                    Count = count,
                    Length = length,
                }
        ),
        Gen.Select(
            Gen.OneOf(Key(s_parts.Fittings), Key(s_parts.Sundries), Key(s_parts.Pots)),
            Gen.Int[1, 99],
            (part, count) => new OnHand { Part = part, Count = count }
        )
    );

    private static readonly Gen<Spares> s_spares = Gen.Select(
        Gen.Select(s_share, s_share, s_share),
        Gen.Int[0, 2],
        Gen.Int[0, 2],
        Length("0 in", "10 ft"),
        (shares, pumps, timers, tube) =>
            new Spares
            {
                Emitters = shares.Item1,
                Seals = shares.Item2,
                Fittings = shares.Item3,
                Pumps = pumps,
                Timers = timers,
                Tube = tube,
            }
    );

    private static readonly Gen<NutrientWater> s_water = Gen.Select(
        Gen.Int[0, 5],
        Gen.Int[0, 4],
        Maybe(Between(Dimension.Conductivity, "0.1 dS/m", "1 dS/m")),
        (calcium, sodium, conductivity) =>
            new NutrientWater
            {
                // As much alkalinity as calcium: a water that can be.
                Alkalinity = calcium == 0 ? null : Invariant($"{calcium} meq/L"),
                Calcium = calcium == 0 ? null : Invariant($"{calcium} meq/L"),
                Sodium = sodium == 0 ? null : Invariant($"{sodium} mmol/L"),
                Chloride = sodium == 0 ? null : Invariant($"{sodium} mmol/L"),
                Conductivity = calcium + sodium == 0 ? conductivity : null,
            }
    );

    private static readonly Gen<IReadOnlyList<NutrientSalt>> s_saltsAtHand = Gen.Select(
            Gen.OneOf("potassium-nitrate", "calcium-nitrate-15.5", "magnesium-sulfate-7h2o"),
            Gen.Int[0, 999],
            Maybe(Between(Dimension.Mass, "1 g", "25 kg"))
        )
        .Array[0, 3]
        .Select(salts =>
            (IReadOnlyList<NutrientSalt>)
                [
                    .. salts.Select(one => new NutrientSalt
                    {
                        Salt = one.Item1,
                        PricePerKg = one.Item2 == 0 ? null : one.Item2 / 100m,
                        Have = one.Item3,
                    }),
                ]
        );

    private static readonly Gen<NutrientMix> s_mix = Gen.Select(
        Gen.Select(
            Gen.OneOf("none", "tomato", "cucumber", "sweet-pepper"),
            Gen.Enum<GrowthStage>(),
            Gen.Enum<NutrientMixing>()
        ),
        Gen.Select(Maybe(Between(Dimension.Conductivity, "0.5 dS/m", "4 dS/m")), s_water, s_share),
        Gen.Select(
            Gen.OneOf("none", "nitric-acid-38", "phosphoric-acid-85"),
            Gen.Int[2, 300],
            Gen.Bool,
            Gen.OneOf("usual", "steiner"),
            Gen.Int[0, 12],
            Gen.Select(Gen.Int[50, 70], Gen.Bool, s_saltsAtHand)
        ),
        Gen.Select(
            Between(Dimension.Volume, "1 gal", "50 gal"),
            Between(Dimension.Mass, "0.01 g", "10 g"),
            Between(Dimension.Temperature, "34 F", "90 F")
        ),
        (what, water, how, sizes) =>
            new NutrientMix
            {
                Crop = what.Item1,
                Stage = what.Item2,
                Mixing = what.Item3,
                Strength = water.Item1,
                Water = water.Item2,
                PureShare = water.Item3,
                Acid = how.Item1,
                PartsOfFeed = how.Item2,
                RawCoir = how.Item3,
                Ph = how.Item6.Item1 / 10.0,
                Salts = how.Item6.Item2 ? how.Item6.Item3 : null,
                Target = how.Item4,
                // Most have no amounts of their own.
                Wanted = how.Item5 < 9 ? new() : new() { Potassium = Invariant($"{how.Item5} mmol/L") },
                CanVolume = sizes.Item1,
                ScaleStep = sizes.Item2,
                StoreTemperature = sizes.Item3,
            }
    );

    // Most rigs ask for no feed: reckoning one takes longer than all the rest.
    private static readonly Gen<NutrientMix> s_nutrients = Gen.Frequency((7, Gen.Const(new NutrientMix())), (1, s_mix));

    /// <summary>Whole valid rigs: 1 to 3 entries of rows, 1 or 2 rows each, 1 to 40 pots in a row.</summary>
    public static readonly Gen<Rig> Rigs = Gen.Select(
        Gen.Select(s_name, Gen.Enum<UnitSystem>(), s_name, s_site, s_row.Array[1, 3]),
        Gen.Select(s_stand, s_cropWire, s_feed, s_drain, s_printing),
        Gen.Select(s_reservoir, s_pump, s_timer),
        Gen.Select(s_onHand.Array[0, 4], s_spares, s_nutrients),
        (what, row, water, parts) =>
            new Rig
            {
                Name = what.Item1,
                Units = what.Item2,
                Notes = what.Item3,
                Site = what.Item4,
                Rows = what.Item5,
                Stand = row.Item1,
                Printing = row.Item5,
                CropWire = row.Item2,
                Feed = row.Item3,
                Drain = row.Item4,
                Reservoir = water.Item1,
                Pump = water.Item2,
                Timer = water.Item3,
                OnHand = parts.Item1,
                Spares = parts.Item2,
                Nutrients = parts.Item3,
            }
    );
}
