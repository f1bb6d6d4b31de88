using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Findings;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Proposing;

/// <summary>Why a search found nothing, the hardest limit first, and what would help.</summary>
internal static class Obstacles
{
    public static IReadOnlyList<Obstacle> Of(Brief brief, Search search)
    {
        var words = new QuantityWords(brief.Units);
        List<Obstacle> obstacles = [];
        int pots = BriefPots.Count(brief, search.Space.Catalogue);
        PotType pot = search.Space.Pot;
        int capacity = RowPatterns.Capacity(brief, pot, search.Space.Catalogue);
        if (capacity < pots || search.Space.Patterns.Count == 0)
        {
            obstacles.Add(Room(brief, search.Space, pots, capacity, words));
            return obstacles;
        }

        if (search.Space.Pumps.Count == 0 && brief.TankShelf is null)
        {
            obstacles.Add(Power(brief, search.Space, words));
        }

        if (search.Space.Frames.Count == 0 && obstacles.Count == 0)
        {
            obstacles.Add(Reservoir(brief, search.Space, words));
        }

        if (search.OverBudget is { } over)
        {
            decimal more = over.Cost - brief.Budget!.Value;
            obstacles.Add(
                new(
                    $"The cheapest rig found that passes costs {RigWords.Money(over.Cost)}; the budget is {RigWords.Money(brief.Budget.Value)}.",
                    $"Allow {RigWords.Money(Math.Ceiling(more))} more, or put what you have already into onHand."
                )
            );
            return obstacles;
        }

        Placing(search.Shortage, search.Planned == 0 && search.Closest is null, obstacles, words);
        if (search.Planned == 0 && search.HeadMissing is { } head)
        {
            obstacles.Add(
                new(
                    $"No pump that the circuit bears lifts the water into the emitters with the pressure they need: {words.Length(head)} of head are missing.",
                    "Add a stronger pump to your own catalogue, free power on the circuit, or choose a lower pot."
                )
            );
        }

        if (search.Planned == 0 && search.Shortage.Days is { } days)
        {
            double asked = brief.DaysWanted / 86_400;
            obstacles.Add(
                new(
                    $"No reservoir that fits lasts {QuantityWords.Number(asked)} days with its pump covered.",
                    $"Ask for {QuantityWords.Number(Math.Floor((asked - days) * 10) / 10)} days, or add a larger tank to your own catalogue."
                )
            );
        }

        foreach (Finding finding in search.Closest ?? [])
        {
            obstacles.Add(
                new(
                    Phrase.Of("obstacle.closest", finding.Rule, finding.What, finding.Value, finding.Limit),
                    finding.Remedy
                )
            );
        }

        if (search.AnyThirsty && obstacles.Count == 0)
        {
            obstacles.Add(
                new(
                    "Every rig that passes would give a pot less in a day's waterings than its plants drink.",
                    "Plant fewer to a pot, or state less water for each plant."
                )
            );
        }

        if (obstacles.Count == 0)
        {
            obstacles.Add(
                search.Stopped
                    ? new("The search was stopped before any rig passed.", "Let it run longer.")
                    : new("Nothing that was tried passes every rule.", "Relax the room, the days or the aisle.")
            );
        }

        return obstacles;
    }

    private static void Placing(Shortage shortage, bool nothingPlaced, List<Obstacle> obstacles, QuantityWords words)
    {
        if (!nothingPlaced)
        {
            return;
        }

        if (shortage.Along is { } along)
        {
            obstacles.Add(
                new(
                    "With stand modules, drain and reservoir the rows are longer than the room.",
                    $"{words.Length(along)} more along the rows would hold it."
                )
            );
        }

        if (shortage.Across is { } across)
        {
            obstacles.Add(
                new(
                    "With aisles, drain and reservoir the rows are wider than the room.",
                    $"{words.Length(across)} more across the rows, or that much less aisle in all, would hold it."
                )
            );
        }

        if (shortage.Fall is { } fall)
        {
            obstacles.Add(
                new(
                    "The drain would arrive under the reservoir's rim even from the highest stand in reach.",
                    $"Sink the reservoir by {words.Length(fall)}, or ask for fewer days so that a lower one will do."
                )
            );
        }

        if (shortage.Parts && obstacles.Count == 0)
        {
            obstacles.Add(
                new(
                    "Your own catalogue has pipes in these sizes for which there is no elbow, tee, cap or other fitting.",
                    "Add their fittings to your catalogue, or take these pipes out of it."
                )
            );
        }

        if (shortage.Holes && obstacles.Count == 0)
        {
            obstacles.Add(
                new(
                    "At this spacing a hole falls on a joint with every length of stand module.",
                    $"Change the spacing a little."
                )
            );
        }
    }

    private static Obstacle Room(Brief brief, SearchSpace space, int pots, int capacity, QuantityWords words)
    {
        (PotType pot, PartsCatalogue catalogue) = (space.Pot, space.Catalogue);
        double spacing = BriefPots.Spacing(brief, pot.Length, catalogue);
        List<string> cures = [];
        if (WouldHold(0.9 * spacing, s => Apart(brief, spacing - s)) is { } closer && spacing - closer > pot.Length)
        {
            cures.Add($"{words.Length(spacing - closer)} from pot to pot would hold them");
        }

        if (WouldHold(300, more => Room(brief, more, 0)) is { } longer)
        {
            cures.Add($"{words.Length(longer)} more room along its length would");
        }

        if (WouldHold(300, more => Room(brief, 0, more)) is { } wider)
        {
            cures.Add($"{words.Length(wider)} more across it would");
        }

        cures.Add(
            capacity > 0 ? $"or take {QuantityWords.Count(capacity)} pots" : "or a smaller pot and a narrower aisle"
        );
        return new(
            $"The room holds at most {QuantityWords.Count(capacity)} pots at {words.Length(spacing)} from pot to pot; the brief asks for {QuantityWords.Count(pots)}.",
            $"{string.Join("; ", cures)}."
        );

        double? WouldHold(double most, Func<double, Brief> changed)
        {
            if (RowPatterns.Capacity(changed(most), pot, catalogue) < pots)
            {
                return null;
            }

            (double low, double high) = (0, most);
            for (int i = 0; i < 40; i++)
            {
                double middle = (low + high) / 2;
                (low, high) =
                    RowPatterns.Capacity(changed(middle), pot, catalogue) < pots ? (middle, high) : (low, middle);
            }

            return high;
        }
    }

    private static Brief Room(Brief brief, double along, double across) =>
        brief with
        {
            Site = brief.Site with
            {
                RoomLength = brief.Site.RoomLength + along,
                RoomWidth = brief.Site.RoomWidth + across,
            },
        };

    private static Brief Apart(Brief brief, double spacing) =>
        brief with
        {
            Crops = [.. brief.Crops.Select(c => c with { Spacing = spacing })],
        };

    private static Obstacle Power(Brief brief, SearchSpace space, QuantityWords words)
    {
        double allowed = brief.Site.Breaker * RuleBook.Limit("circuit-load") * brief.Site.Voltage;
        double least = space.AllPumps.Count == 0 ? 0 : space.AllPumps.Min(p => p.Power);
        double over = brief.Site.OtherLoads + least - allowed;
        return new(
            $"The circuit bears {words.Power(allowed)} for hours on end; with other loads of {words.Power(brief.Site.OtherLoads)} not even the smallest pump of {words.Power(least)} has room.",
            $"Move {words.Power(over)} of lamps or heaters to another circuit."
        );
    }

    private static Obstacle Reservoir(Brief brief, SearchSpace space, QuantityWords words)
    {
        double most = space.LargestFilled;
        double days = brief.DaysWanted / 86_400;
        double lasts = most / space.Use / 86_400;
        return new(
            $"{QuantityWords.Number(days)} days take {words.Volume(space.VolumeWanted)}; the largest tank in these sizes whose rim stays under the wall outlet holds {words.Volume(most)}.",
            $"Ask for {QuantityWords.Number(Math.Floor(lasts * 10) / 10)} days, have the outlet set higher, or add a larger tank to your own catalogue."
        );
    }
}
