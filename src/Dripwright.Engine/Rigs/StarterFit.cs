using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Rigs;

/// <summary>What was chosen so that the first rig of some answers holds together.</summary>
/// <param name="Rig">The rig.</param>
/// <param name="Chosen">What differs from what was asked for or is usual, to be told.</param>
internal sealed record StarterFit(Rig Rig, IReadOnlyList<Phrase> Chosen);

/// <summary>Fits a first rig to its count of pots: rows that go into the room, a reservoir that lasts, a stand high enough.</summary>
/// <remarks>Rules of thumb on the safe side; the plan judges what comes of them, and a test that it has nothing to mend.</remarks>
internal static class StarterFitting
{
    // Beside and behind the rows pass drain and collector.
    private const double Beside = 0.3;

    // Drops through elbows and tees between the rows' drains and the reservoir's rim.
    private const double Drops = 0.2;

    // By gravity what is dripped is carried back once a day: a day of it, as the clock of a first rig gives it.
    private const double DrippedADay = 0.0035;

    private const double Day = 86_400;

    public static StarterFit Of(Rig rig, PartsCatalogue catalogue)
    {
        List<Phrase> chosen = [];
        rig = Lasting(rig, catalogue, chosen);
        rig = InRows(rig, catalogue, chosen);
        rig = HighEnough(rig, catalogue, chosen);
        return new StarterFit(InRoom(rig, catalogue, chosen), chosen);
    }

    private static int Pots(Rig rig) => rig.Rows.Sum(r => r.Count * r.Pots);

    /// <summary>The smallest tank of the usual one's kind that lasts as long as is wanted, by gravity a day.</summary>
    private static Rig Lasting(Rig rig, PartsCatalogue catalogue, List<Phrase> chosen)
    {
        var crop = catalogue.CropOrOther(rig.Rows[0].Planting![0].Crop);
        var plants = Pots(rig) * (crop?.PlantsPerPot ?? 1);
        var days = rig.Reservoir.DaysWanted / Day;
        var needed =
            rig.Pump.Model == GroupKeys.None ? Pots(rig) * DrippedADay : plants * (crop?.UsePerPlant ?? 0) * Day * days;
        double Holds(TankType tank) =>
            tank.Inside.VolumeAt(rig.Reservoir.Fill * tank.Height)
            - tank.Inside.VolumeAt(Math.Min(rig.Reservoir.LowestLevel, tank.Height));
        var usual = catalogue.Tanks[rig.Reservoir.Tank];
        if (Holds(usual) >= needed)
        {
            return rig;
        }

        var kind = rig.Units == UnitSystem.Us ? "-gal" : "-l";
        var boxes = catalogue
            .Tanks.Values.Where(t => t.Shape == TankShape.Box && t.Key.EndsWith(kind, StringComparison.Ordinal))
            // A tank as high as a table stands higher than any drain.
            .Where(t => t.Height < 0.5)
            .OrderBy(t => t.Volume)
            .ToList();
        var tank = boxes.Find(t => Holds(t) >= needed) ?? boxes.LastOrDefault() ?? usual;
        chosen.Add(Phrase.Of("starter.tank", Phrase.Plain(tank.Name), Pots(rig)));
        return rig with { Reservoir = rig.Reservoir with { Tank = tank.Key } };
    }

    private static double LengthOf(Row row, PotType pot) =>
        Math.Max(1, Math.Ceiling(((((row.Pots - 1) * row.Spacing) + pot.Length) / row.ModuleLength) - 1e-9))
        * row.ModuleLength;

    private static double DepthOf(Row row, PotType pot) =>
        row.Aisle + pot.Width + (row.Arrangement == Arrangement.Staggered ? row.LineDistance : 0);

    /// <summary>More rows where one does not go into the room; their aisles narrower where that makes them fit.</summary>
    private static Rig InRows(Rig rig, PartsCatalogue catalogue, List<Phrase> chosen)
    {
        var row = rig.Rows[0];
        if (row.Count > 1)
        {
            return rig;
        }

        var pot = catalogue.Pots[row.Pot];
        var tank = catalogue.Tanks[rig.Reservoir.Tank].Length + rig.Reservoir.Gap;
        bool Fits(int rows, double aisle)
        {
            var longest = row with { Pots = (row.Pots + rows - 1) / rows, Aisle = aisle };
            return LengthOf(longest, pot) + tank + (rows > 1 ? Beside : 0) <= rig.Site.RoomLength
                && (rows * DepthOf(longest, pot)) + Beside <= rig.Site.RoomWidth;
        }

        var narrow = QuantityText.Parse(Dimension.Length, rig.Units == UnitSystem.Us ? "24 in" : "61 cm");
        const int Most = 8;
        var (count, aisle) = Enumerable
            .Range(1, Most)
            .SelectMany(n => new[] { (n, row.Aisle), (n, narrow) })
            .Where(c => Fits(c.Item1, c.Item2))
            .Append((Math.Max(1, (row.Pots + 14) / 15), row.Aisle))
            .First();
        if (count == 1)
        {
            return rig with { Rows = [row with { Aisle = aisle }] };
        }

        var few = row.Pots / count;
        var longer = row.Pots % count;
        chosen.Add(Phrase.Of("starter.rows", count, row.Pots));
        return rig with
        {
            Rows =
            [
                .. longer > 0 ? [row with { Count = longer, Pots = few + 1, Aisle = aisle }] : (List<Row>)[],
                row with
                {
                    Count = count - longer,
                    Pots = few,
                    Aisle = aisle,
                },
            ],
        };
    }

    /// <summary>Pots high enough that the drains fall over the reservoir's rim.</summary>
    private static Rig HighEnough(Rig rig, PartsCatalogue catalogue, List<Phrase> chosen)
    {
        if (rig.Drain.Into == DrainTarget.CatchTank)
        {
            return rig;
        }

        var pot = catalogue.Pots[rig.Rows[0].Pot];
        var along = rig.Rows.Max(r => LengthOf(r, pot)) + rig.Reservoir.Gap + 0.2;
        var rows = rig.Rows.Sum(r => r.Count);
        var across = rows > 1 ? rig.Rows.Sum(r => r.Count * DepthOf(r, pot)) + 0.3 : 0;
        var needed =
            rig.Reservoir.Base
            + catalogue.Tanks[rig.Reservoir.Tank].Height
            + rig.Drain.BelowPots
            + catalogue.Pipes[rig.Drain.Pipe].OutsideDiameter
            + (rig.Drain.Slope * (along + across))
            + (rows > 1 ? Drops : 0.02);
        var highest = rig.Rows.Max(r => r.StandHeight);
        if (highest >= needed)
        {
            return rig;
        }

        var step = rig.Units == UnitSystem.Us ? 0.0254 : 0.01;
        var height = Math.Ceiling(needed / step) * step;
        chosen.Add(Phrase.Of("starter.height", Measured.Length(height)));
        return rig with { Rows = [.. rig.Rows.Select(r => r with { StandHeight = height })] };
    }

    /// <summary>A room that is large enough where the usual one is not: nobody has measured it yet.</summary>
    private static Rig InRoom(Rig rig, PartsCatalogue catalogue, List<Phrase> chosen)
    {
        var pot = catalogue.Pots[rig.Rows[0].Pot];
        var rows = rig.Rows.Sum(r => r.Count);
        var length =
            rig.Rows.Max(r => LengthOf(r, pot))
            + catalogue.Tanks[rig.Reservoir.Tank].Length
            + rig.Reservoir.Gap
            + (rows > 1 ? Beside : 0.05);
        var width = rig.Rows.Sum(r => r.Count * DepthOf(r, pot)) + Beside;
        var tank = catalogue.Tanks[rig.Reservoir.Tank].Width;
        width = Math.Max(width, rig.Rows[0].Aisle + (tank / 2) + (pot.Width / 2) + Beside);
        var (room, wide) = (rig.Site.RoomLength, rig.Site.RoomWidth);
        if (length <= room && width <= wide)
        {
            return rig;
        }

        var step = rig.Units == UnitSystem.Us ? 0.3048 : 0.5;
        room = Math.Max(room, Math.Ceiling(length / step) * step);
        wide = Math.Max(wide, Math.Ceiling(width / step) * step);
        chosen.Add(Phrase.Of("starter.room", Measured.Length(room), Measured.Length(wide)));
        return rig with { Site = rig.Site with { RoomLength = room, RoomWidth = wide } };
    }
}
