using Dripwright.Engine.Findings;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Proposing;

/// <summary>Why a search found nothing, the hardest limit first, and what would help.</summary>
internal static class Obstacles
{
    public static IReadOnlyList<Obstacle> Of(Brief brief, Search search)
    {
        List<Obstacle> obstacles = [];
        var pots = BriefPots.Count(brief, search.Space.Catalogue);
        var pot = search.Space.Pot;
        var capacity = RowPatterns.Capacity(brief, pot, search.Space.Catalogue);
        if (capacity < pots || search.Space.Patterns.Count == 0)
        {
            obstacles.Add(Room(brief, search.Space, pots, capacity));
            return obstacles;
        }

        if (search.Space.Pumps.Count == 0 && brief.TankShelf is null)
        {
            obstacles.Add(Power(brief, search.Space));
        }

        if (search.Space.Frames.Count == 0 && obstacles.Count == 0)
        {
            obstacles.Add(Reservoir(brief, search.Space));
        }

        if (search.OverBudget is { } over)
        {
            var more = over.Cost - brief.Budget!.Value;
            obstacles.Add(
                new(
                    Phrase.Of("obstacle.budget", RigWords.Money(over.Cost), RigWords.Money(brief.Budget.Value)),
                    Phrase.Of("obstacle.budget.remedy", RigWords.Money(Math.Ceiling(more)))
                )
            );
            return obstacles;
        }

        Placing(search.Shortage, search.Planned == 0 && search.Closest is null, obstacles);
        if (search.Planned == 0 && search.HeadMissing is { } head)
        {
            obstacles.Add(new(Phrase.Of("obstacle.head", Measured.Head(head)), Phrase.Of("obstacle.head.remedy")));
        }

        if (search.Planned == 0 && search.Shortage.Days is { } days)
        {
            var asked = brief.DaysWanted / 86_400;
            obstacles.Add(
                new(
                    Phrase.Of("obstacle.days", Measured.Days(asked * 86_400)),
                    Phrase.Of("obstacle.days.remedy", Measured.Days(Math.Floor((asked - days) * 10) / 10 * 86_400))
                )
            );
        }

        foreach (var finding in search.Closest ?? [])
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
            obstacles.Add(new(Phrase.Of("obstacle.thirst"), Phrase.Of("obstacle.thirst.remedy")));
        }

        if (obstacles.Count == 0)
        {
            obstacles.Add(
                search.Stopped
                    ? new(Phrase.Of("obstacle.stopped"), Phrase.Of("obstacle.stopped.remedy"))
                    : new(Phrase.Of("obstacle.nothing"), Phrase.Of("obstacle.nothing.remedy"))
            );
        }

        return obstacles;
    }

    private static void Placing(Shortage shortage, bool nothingPlaced, List<Obstacle> obstacles)
    {
        if (!nothingPlaced)
        {
            return;
        }

        if (shortage.Along is { } along)
        {
            obstacles.Add(new(Phrase.Of("obstacle.along"), Phrase.Of("obstacle.along.remedy", Measured.Length(along))));
        }

        if (shortage.Across is { } across)
        {
            obstacles.Add(
                new(Phrase.Of("obstacle.across"), Phrase.Of("obstacle.across.remedy", Measured.Length(across)))
            );
        }

        if (shortage.Fall is { } fall)
        {
            obstacles.Add(new(Phrase.Of("obstacle.fall"), Phrase.Of("obstacle.fall.remedy", Measured.Length(fall))));
        }

        if (shortage.Parts && obstacles.Count == 0)
        {
            obstacles.Add(new(Phrase.Of("obstacle.parts"), Phrase.Of("obstacle.parts.remedy")));
        }

        if (shortage.Holes && obstacles.Count == 0)
        {
            obstacles.Add(new(Phrase.Of("obstacle.holes"), Phrase.Of("obstacle.holes.remedy")));
        }
    }

    private static Obstacle Room(Brief brief, SearchSpace space, int pots, int capacity)
    {
        (var pot, var catalogue) = (space.Pot, space.Catalogue);
        var spacing = BriefPots.Spacing(brief, pot.Length, catalogue);
        List<Phrase> cures = [];
        if (WouldHold(0.9 * spacing, s => Apart(brief, spacing - s)) is { } closer && spacing - closer > pot.Length)
        {
            cures.Add(Phrase.Of("obstacle.room.closer", Measured.Length(spacing - closer)));
        }

        if (WouldHold(300, more => Room(brief, more, 0)) is { } longer)
        {
            cures.Add(Phrase.Of("obstacle.room.longer", Measured.Length(longer)));
        }

        if (WouldHold(300, more => Room(brief, 0, more)) is { } wider)
        {
            cures.Add(Phrase.Of("obstacle.room.wider", Measured.Length(wider)));
        }

        cures.Add(capacity > 0 ? Phrase.Counted("obstacle.room.fewer", capacity) : Phrase.Of("obstacle.room.smaller"));
        return new(
            Phrase.Of("obstacle.room", Phrase.Counted("count.pots", capacity), Measured.Length(spacing), pots),
            Phrase.Of("obstacle.room.remedy", new Several(cures, Joint.Or))
        );

        double? WouldHold(double most, Func<double, Brief> changed)
        {
            if (RowPatterns.Capacity(changed(most), pot, catalogue) < pots)
            {
                return null;
            }

            (double low, var high) = (0, most);
            for (var i = 0; i < 40; i++)
            {
                var middle = (low + high) / 2;
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

    private static Obstacle Power(Brief brief, SearchSpace space)
    {
        var allowed = brief.Site.Breaker * RuleBook.Limit("circuit-load") * brief.Site.Voltage;
        var least = space.AllPumps.Count == 0 ? 0 : space.AllPumps.Min(p => p.Power);
        var over = brief.Site.OtherLoads + least - allowed;
        return new(
            Phrase.Of(
                "obstacle.power",
                Measured.Power(allowed),
                Measured.Power(brief.Site.OtherLoads),
                Measured.Power(least)
            ),
            Phrase.Of("obstacle.power.remedy", Measured.Power(over))
        );
    }

    private static Obstacle Reservoir(Brief brief, SearchSpace space)
    {
        var most = space.LargestFilled;
        var days = brief.DaysWanted / 86_400;
        var lasts = most / space.Use / 86_400;
        return new(
            Phrase.Of(
                "obstacle.reservoir",
                Measured.Days(days * 86_400),
                Measured.Volume(space.VolumeWanted),
                Measured.Volume(most)
            ),
            Phrase.Of("obstacle.reservoir.remedy", Measured.Days(Math.Floor(lasts * 10) / 10 * 86_400))
        );
    }
}
