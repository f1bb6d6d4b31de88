using System.Globalization;
using Dripwright.Engine.Chemistry.Formulas;
using Dripwright.Engine.Files;

namespace Dripwright.Engine.Catalogue;

/// <summary>One group of the catalogue as a table of texts.</summary>
/// <param name="Title">Name of the group, as people say it.</param>
/// <param name="Columns">Heads of the columns.</param>
/// <param name="Rows">Cells of each row, as many as columns.</param>
public sealed record CatalogueGroup(
    string Title,
    IReadOnlyList<string> Columns,
    IReadOnlyList<IReadOnlyList<string>> Rows
);

/// <summary>The catalogue for people to read: every group with its main figures in both unit systems.</summary>
public static class CatalogueListing
{
    private const double Inch = 0.0254;
    private const double Foot = 0.3048;
    private const double Gallon = 0.003785411784;
    private const double PoundForce = 4.4482216152605;
    private const double Psi = PoundForce / (Inch * Inch);

    /// <summary>All groups in a fixed order, the last column of each being the source.</summary>
    /// <param name="parts">The catalogue.</param>
    public static IReadOnlyList<CatalogueGroup> Of(PartsCatalogue parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        return
        [
            Group(
                "Pipes and hoses",
                ["Outside", "Bore", "Sold in"],
                parts.Pipes,
                pipe => [Size(pipe.OutsideDiameter), Size(pipe.InsideDiameter), Long(pipe.StockLengths)]
            ),
            Group(
                "Fittings",
                ["Laying length", "Socket or barb", "Bore", "Loss through", "Loss branch", "Clamps"],
                parts.Fittings,
                fitting =>
                    [
                        Size(fitting.LayingLength),
                        Size(fitting.SocketDepth),
                        fitting.Bore > 0 ? Size(fitting.Bore) : "the pipe's",
                        Number(fitting.LossThrough),
                        fitting.Kind == FittingKind.Tee ? Number(fitting.LossBranch) : "",
                        Number(fitting.Clamps),
                    ]
            ),
            Group(
                "Stand tubes",
                ["Outside", "Wall", "Sold in"],
                parts.Tubes,
                tube => [Size(tube.Outside), Size(tube.Wall), Long(tube.StockLengths)]
            ),
            Group(
                "Pots",
                ["Volume", "Along the row", "Across", "Height", "Drain sill"],
                parts.Pots,
                pot => [Room(pot.Volume), Size(pot.Length), Size(pot.Width), Size(pot.Height), Size(pot.DrainHeight)]
            ),
            Group(
                "Reservoirs",
                ["Volume", "Length", "Width", "Height"],
                parts.Tanks,
                tank => [Room(tank.Volume), Size(tank.Length), Size(tank.Width), Size(tank.Height)]
            ),
            Group(
                "Emitters",
                ["Flow", "at", "x", "Works from", "to", "Cv", "Passage", "Hole"],
                parts.Emitters,
                emitter =>
                    [
                        Flow(emitter.RatedFlow),
                        Push(emitter.RatedPressure),
                        Number(emitter.Exponent),
                        Push(emitter.MinPressure),
                        Push(emitter.MaxPressure),
                        Number(emitter.Variation),
                        Size(emitter.Passage),
                        Size(emitter.Punch),
                    ]
            ),
            Group(
                "Strainers",
                ["Opening", "Loss"],
                parts.Strainers,
                strainer => [Number(strainer.Opening * 1e6) + " µm", Number(strainer.Loss)]
            ),
            Group(
                "Pumps",
                ["Greatest lift", "Open flow", "Power", "Cord"],
                parts.Pumps,
                pump =>
                    [Lift(pump.Curve[0].Head), Flow(pump.Curve[^1].Flow), Number(pump.Power) + " W", Lift(pump.Cord)]
            ),
            Group(
                "Pot outlets",
                ["Bore", "Hole in the pot", "Hole in the pipe", "Reach"],
                parts.Outlets,
                outlet => [Size(outlet.Bore), Size(outlet.PotHole), Size(outlet.PipeHole), Size(outlet.Reach)]
            ),
            Group(
                "Crop wires",
                ["Diameter", "Breaks at", "Stiffness", "Roll"],
                parts.Wires,
                wire => [Size(wire.Diameter), Pull(wire.BreakingForce), Pull(wire.Stiffness), Lift(wire.Roll)]
            ),
            Group(
                "Everything else",
                ["Section", "Pack"],
                parts.Sundries,
                sundry => [sundry.Section, sundry.PackLength > 0 ? Lift(sundry.PackLength) : Number(sundry.Pack)]
            ),
            new(
                "Crops",
                [
                    "Key",
                    "Crop",
                    "Also called",
                    "Spacing",
                    "Hangs with",
                    "In a pot",
                    "Drinks",
                    "Light",
                    "Tolerates sodium",
                    "Source",
                ],
                [
                    .. parts.Crops.Values.Select(crop =>
                        (IReadOnlyList<string>)
                            [
                                crop.Key,
                                crop.Name,
                                string.Join(", ", crop.Words),
                                Size(crop.Spacing),
                                crop.Hangs ? Number(crop.PlantMass) + " kg" : "stands by itself",
                                Number(crop.PlantsPerPot),
                                Number(crop.UsePerPlant * 86_400_000) + " L/day",
                                crop.LightMolesPerSquareMetreAndDay is { } light
                                    ? Number(light) + " mol/m² a day"
                                    : "not known",
                                crop.SodiumMillimolesPerLitre is { } sodium ? Number(sodium) + " mmol/L" : "not known",
                                crop.Source,
                            ]
                    ),
                ]
            ),
            new(
                "Media",
                ["Key", "Medium", "Air", "Water", "Easy water", "Rest between waterings", "Made ready", "Source"],
                [
                    .. parts.Media.Values.Select(medium =>
                        (IReadOnlyList<string>)
                            [
                                medium.Key,
                                medium.Name,
                                Number(medium.Air * 100) + " %",
                                Number(medium.Water * 100) + " %",
                                Number(medium.EasyWater * 100) + " %",
                                medium.Rest > 0 ? Number(medium.Rest / 60) + " min" : "none",
                                medium.Rinse,
                                medium.Source,
                            ]
                    ),
                ]
            ),
            new(
                "Salts, acids and bases",
                ["Key", "Part", "Kind", "Brings, % of its mass", "Price of a kilogram", "Source"],
                [
                    .. parts.Salts.Salts.Values.Select(salt =>
                        (IReadOnlyList<string>)
                            [
                                salt.Key,
                                salt.Name,
                                FieldDescription.Dashed(salt.Kind.ToString()),
                                Elements(salt.Brings, amount => amount * 100),
                                salt.PricePerKilogram?.ToString("0.00", CultureInfo.InvariantCulture) ?? "yours to say",
                                salt.Source,
                            ]
                    ),
                ]
            ),
            new(
                "Targets of a feed",
                ["Key", "Part", "Wanted, mg/L", "Source"],
                [
                    .. parts.Targets.Targets.Values.Select(target =>
                        (IReadOnlyList<string>)
                            [
                                target.Key,
                                target.Name,
                                Elements(
                                    Composition.Of(target.Wanted.Select(one => (one.Key, one.Value))),
                                    amount => amount * 1000
                                ),
                                target.Source,
                            ]
                    ),
                ]
            ),
        ];
    }

    private static CatalogueGroup Group<T>(
        string title,
        IEnumerable<string> columns,
        IReadOnlyDictionary<string, T> parts,
        Func<T, IEnumerable<string>> cells
    )
        where T : CatalogueEntry =>
        new(
            title,
            ["Key", "Part", .. columns, "Typical price, US$", "Source"],
            [
                .. parts.Values.Select(entry =>
                    (IReadOnlyList<string>)[entry.Key, entry.Name, .. cells(entry), PriceOf(entry), entry.Source]
                ),
            ]
        );

    private static string Pull(double force) =>
        string.Create(CultureInfo.InvariantCulture, $"{force / 1000:0.##} kN ({force / PoundForce:0} lbf)");

    // The element itself, by mass: nitrogen as N, phosphorus as P.
    private static string Elements(Composition composition, Func<double, double> shown) =>
        string.Join(
            ", ",
            Composition
                .Constituents.Where(one => composition[one] > 0 && one != Constituent.InorganicCarbon)
                .Select(one =>
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{Forms.ShortName(one)} {shown(composition[one] * Forms.MassPerMole(one)):0.###}"
                    )
                )
        );

    // Pot outlets are bought in their pieces.
    private static string PriceOf(CatalogueEntry entry) =>
        entry.TypicalPrice?.ToString("0.00", CultureInfo.InvariantCulture)
        ?? (entry is DrainOutletType ? "in pieces" : "none");

    private static string Size(double length) =>
        string.Create(CultureInfo.InvariantCulture, $"{length * 1000:0.##} mm ({length / Inch:0.###} in)");

    private static string Lift(double length) =>
        string.Create(CultureInfo.InvariantCulture, $"{length:0.##} m ({length / Foot:0.##} ft)");

    private static string Long(IEnumerable<double> lengths) => string.Join(", ", lengths.Select(Lift));

    private static string Room(double volume) =>
        string.Create(CultureInfo.InvariantCulture, $"{volume * 1000:0.#} L ({volume / Gallon:0.##} gal)");

    private static string Flow(double flow) =>
        string.Create(CultureInfo.InvariantCulture, $"{flow * 3.6e6:0.##} L/h ({flow * 3600 / Gallon:0.##} gph)");

    private static string Push(double pressure) =>
        string.Create(CultureInfo.InvariantCulture, $"{pressure / 1000:0.#} kPa ({pressure / Psi:0.#} psi)");

    private static string Number(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);
}
