using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Curing.Ideas;

/// <summary>What a grower changes at the rows: how many pots, how far apart, how high, on what modules.</summary>
internal static class RowIdeas
{
    /// <summary>Pots a little closer or farther apart.</summary>
    public static IEnumerable<Cure> ShiftSpacing(Asked asked)
    {
        var step = asked.Rig.Units == UnitSystem.Us ? 0.0254 / 2 : 0.01;
        foreach (var by in new[] { 1, -1, 2, -2, 3, -3, 4, -4, 6, -6 })
        {
            foreach (var cure in Asked.Each(asked.Specs, i => Spacing(asked, i, by * step)))
            {
                yield return cure;
            }
        }
    }

    private static FieldChange? Spacing(Asked asked, int spec, double by)
    {
        var row = asked.Rig.Rows[spec];
        var path = Asked.Row(spec, "spacing");
        return by > 0
            ? RigCure.LengthUp(asked.Rig, path, row.Spacing + by)
            : RigCure.LengthDown(asked.Rig, path, row.Spacing + by);
    }

    /// <summary>Pots farther apart.</summary>
    public static IEnumerable<Cure> Wider(Asked asked) =>
        new[] { 1.1, 1.25, 1.5, 2 }.SelectMany(by =>
            Asked.Each(
                asked.Specs,
                i => RigCure.LengthUp(asked.Rig, Asked.Row(i, "spacing"), by * asked.Rig.Rows[i].Spacing)
            )
        );

    /// <summary>Pots as close as their rims allow.</summary>
    public static IEnumerable<Cure> Closer(Asked asked) =>
        Closest(asked) is { } closest ? [Cure.Of([.. closest, .. FreeModules(asked, asked.AllSpecs)])] : [];

    private static List<FieldChange>? Closest(Asked asked)
    {
        List<FieldChange> changes = [];
        foreach (var i in asked.AllSpecs)
        {
            var row = asked.Layout.Rows.FirstOrDefault(r => r.SpecIndex == i);
            if (row is null || row.Spec.Arrangement == Arrangement.Staggered)
            {
                continue;
            }

            if (
                row.Spec.Spacing > row.Pot.Length + 0.01
                && RigCure.LengthUp(asked.Rig, Asked.Row(i, "spacing"), row.Pot.Length) is { } change
            )
            {
                changes.Add(change);
            }
        }

        return changes.Count > 0 ? changes : null;
    }

    private static IEnumerable<FieldChange> FreeModules(Asked asked, IEnumerable<int> specs) =>
        specs.Where(i => asked.Rig.Rows[i].Modules is not null).Select(i => Set.Out(Asked.Row(i, "modules")));

    /// <summary>As many modules as the pots take.</summary>
    public static IEnumerable<Cure> OwnModules(Asked asked)
    {
        FieldChange[] changes = [.. FreeModules(asked, asked.Specs)];
        return changes.Length > 0 ? [Cure.Of(changes)] : [];
    }

    /// <summary>Other modules: longer, shorter.</summary>
    public static IEnumerable<Cure> OtherModules(Asked asked)
    {
        var step = asked.Rig.Units == UnitSystem.Us ? 0.0254 : 0.025;
        foreach (var by in new[] { -1, 1, -2, 2, -4, 4, -8, 8, -12, 12 })
        {
            foreach (
                var cure in Asked.Each(asked.Specs, i => Module(asked, i, asked.Rig.Rows[i].ModuleLength + (by * step)))
            )
            {
                yield return cure;
            }
        }
    }

    /// <summary>Shorter modules, so that tubes span less.</summary>
    public static IEnumerable<Cure> ShorterModules(Asked asked)
    {
        foreach (var share in new[] { 0.85, 0.7, 0.5 })
        {
            foreach (var cure in Asked.Each(asked.Specs, i => Module(asked, i, share * asked.Rig.Rows[i].ModuleLength)))
            {
                yield return Cure.Of([.. cure.Changes, .. FreeModules(asked, asked.Specs)]);
            }
        }
    }

    private static FieldChange? Module(Asked asked, int spec, double length) =>
        length > 0.3 ? RigCure.LengthDown(asked.Rig, Asked.Row(spec, "moduleLength"), length) : null;

    /// <summary>Rows just long enough for the pots, on modules that divide them evenly.</summary>
    public static IEnumerable<Cure> FittedModules(Asked asked)
    {
        List<FieldChange> changes = [];
        foreach (var i in asked.AllSpecs)
        {
            var row = asked.Layout.Rows.First(r => r.SpecIndex == i);
            var needed = ((row.Pots.Count - 1) * row.Spec.Spacing) + row.Pot.Length;
            var pieces = Math.Max(1, Math.Ceiling(needed / Math.Max(0.9, row.Spec.ModuleLength)));
            if (
                row.Length > needed + 0.05
                && RigCure.LengthUp(asked.Rig, Asked.Row(i, "moduleLength"), needed / pieces) is { } change
            )
            {
                changes.Add(change);
            }
        }

        return changes.Count > 0 ? [Cure.Of([.. changes, .. FreeModules(asked, asked.AllSpecs)])] : [];
    }

    /// <summary>Rows of fewer pots; what is planted beyond them goes.</summary>
    public static IEnumerable<Cure> FewerPots(Asked asked)
    {
        var over = asked.Layout.LengthUsed - asked.Rig.Site.RoomLength;
        foreach (var more in new[] { 0, 1, 2, 4 })
        {
            List<FieldChange> changes = [];
            foreach (var i in asked.AllSpecs)
            {
                var row = asked.Rig.Rows[i];
                var fewer = (int)Math.Ceiling((Math.Max(0, over) / row.Spacing) - 1e-6) + more;
                changes.AddRange(Pots(asked.Rig, i, Math.Max(1, row.Pots - fewer)));
            }

            if (changes.Count > 0)
            {
                yield return Cure.Of([.. changes, .. FreeModules(asked, asked.AllSpecs)]);
            }
        }
    }

    /// <summary>Fewer pots by shares: for what the whole rig is too large.</summary>
    public static IEnumerable<Cure> FewerPlants(Asked asked)
    {
        foreach (var share in new[] { 0.75, 0.5, 0.35, 0.2 })
        {
            FieldChange[] changes =
            [
                .. asked.AllSpecs.SelectMany(i =>
                    Pots(asked.Rig, i, Math.Max(1, (int)(share * asked.Rig.Rows[i].Pots)))
                ),
            ];
            if (changes.Length > 0)
            {
                yield return Cure.Of([.. changes, .. FreeModules(asked, asked.AllSpecs)]);
            }
        }
    }

    private static IEnumerable<FieldChange> Pots(Rig rig, int spec, int pots)
    {
        var row = rig.Rows[spec];
        if (pots >= row.Pots)
        {
            yield break;
        }

        yield return RigCure.Whole(Asked.Row(spec, "pots"), pots);
        if (row.Planting is null)
        {
            yield break;
        }

        List<Planting> kept = [];
        foreach (var planting in row.Planting)
        {
            if (!PotRange.TryParse(planting.Pots, row.Pots, out var named, out _))
            {
                continue;
            }

            int[] left = [.. named.Where(p => p <= pots)];
            if (left.Length == named.Count)
            {
                kept.Add(planting);
            }
            else if (left.Length > 0)
            {
                kept.Add(
                    planting with
                    {
                        Pots = string.Join(
                            ", ",
                            QuantityWords
                                .Ranges(left)
                                .Select(r =>
                                    r.First == r.Last
                                        ? QuantityWords.Count(r.First)
                                        : $"{QuantityWords.Count(r.First)}-{QuantityWords.Count(r.Last)}"
                                )
                        ),
                    }
                );
            }
        }

        if (!kept.SequenceEqual(row.Planting))
        {
            yield return RigCure.List(rig, Asked.Row(spec, "planting"), kept);
        }
    }

    /// <summary>Twice the rows with half the pots.</summary>
    public static IEnumerable<Cure> MoreShorterRows(Asked asked) =>
        asked.Rig.Rows.All(r => r.Planting is null or { Count: 0 } && r.Pots > 1)
            ? Asked
                .Each(asked.AllSpecs, i => RigCure.Whole(Asked.Row(i, "pots"), (asked.Rig.Rows[i].Pots + 1) / 2))
                .SelectMany(pots =>
                    Asked
                        .Each(asked.AllSpecs, i => Set.Whole(Asked.Row(i, "count"), 2 * asked.Rig.Rows[i].Count))
                        .Select(count =>
                            Cure.Of([.. pots.Changes, .. count.Changes, .. FreeModules(asked, asked.AllSpecs)])
                        )
                )
            : [];

    /// <summary>Fewer rows.</summary>
    public static IEnumerable<Cure> FewerRows(Asked asked)
    {
        var most = asked.Rig.Rows.Max(r => r.Count);
        for (var count = most - 1; count >= 1; count--)
        {
            yield return Cure.Of([
                .. asked
                    .AllSpecs.Where(i => asked.Rig.Rows[i].Count > count)
                    .Select(i => RigCure.Whole(Asked.Row(i, "count"), count)),
            ]);
        }
    }

    /// <summary>A row less in the file: the last one goes.</summary>
    public static IEnumerable<Cure> WithoutLastRows(Asked asked)
    {
        for (var kept = asked.Rig.Rows.Count - 1; kept >= 1; kept--)
        {
            yield return Cure.Of([RigCure.List(asked.Rig, "rows", [.. asked.Rig.Rows.Take(kept)])]);
            yield return Cure.Of([
                RigCure.List(asked.Rig, "rows", [.. asked.Rig.Rows.Take(kept).Select(r => r with { Count = 1 })]),
            ]);
        }
    }

    /// <summary>Aisles no wider than one needs to pass.</summary>
    public static IEnumerable<Cure> NarrowerAisles(Asked asked)
    {
        var least = RuleBook.Limit("aisle-narrow");
        FieldChange[] changes = [.. AislesTo(asked, least)];
        return changes.Length > 0 ? [Cure.Of(changes)] : [];
    }

    private static IEnumerable<FieldChange> AislesTo(Asked asked, double least) =>
        asked
            .AllSpecs.Where(i => asked.Rig.Rows[i].Aisle > least + 0.006)
            .Select(i => RigCure.LengthUp(asked.Rig, Asked.Row(i, "aisle"), least))
            .OfType<FieldChange>();

    /// <summary>Stands as shallow as their pots.</summary>
    public static IEnumerable<Cure> ShallowerStands(Asked asked)
    {
        List<FieldChange> changes = [];
        if (asked.Rig.Stand.Depth is not null)
        {
            changes.Add(Set.Out("stand.depth"));
        }

        foreach (var i in asked.AllSpecs.Where(i => asked.Rig.Rows[i].Arrangement == Arrangement.Staggered))
        {
            changes.Add(Set.To(Asked.Row(i, "arrangement"), "single"));
        }

        if (changes.Count > 0)
        {
            yield return Cure.Of(changes);
            yield return Cure.Of([.. changes, .. AislesTo(asked, RuleBook.Limit("aisle-narrow"))]);
        }
    }

    /// <summary>Stands higher.</summary>
    public static IEnumerable<Cure> Raise(Asked asked) => Lift(asked, asked.AllSpecs);

    /// <summary>Only the rows it speaks of higher.</summary>
    public static IEnumerable<Cure> RaiseThese(Asked asked) => Lift(asked, asked.Specs);

    private static IEnumerable<Cure> Lift(Asked asked, IReadOnlyList<int> specs) =>
        Lift(asked, (IEnumerable<int>)specs);

    private static IEnumerable<Cure> Lift(Asked asked, IEnumerable<int> specs)
    {
        int[] rows = [.. specs];
        foreach (var by in new[] { 0.05, 0.1, 0.2, 0.3, 0.5, 0.8, 1.2 })
        {
            foreach (
                var cure in Asked.Each(
                    rows,
                    i => RigCure.LengthUp(asked.Rig, Asked.Row(i, "standHeight"), asked.Rig.Rows[i].StandHeight + by)
                )
            )
            {
                yield return cure;
            }
        }
    }

    /// <summary>Stands lower, or none.</summary>
    public static IEnumerable<Cure> Lower(Asked asked)
    {
        foreach (var share in new[] { 0.8, 0.6, 0.4, 0.2 })
        {
            foreach (
                var cure in Asked.Each(
                    asked.Specs,
                    i =>
                        RigCure.LengthDown(
                            asked.Rig,
                            Asked.Row(i, "standHeight"),
                            share * asked.Rig.Rows[i].StandHeight
                        )
                )
            )
            {
                yield return cure;
            }
        }
    }

    /// <summary>Rows that are on the floor stay on it.</summary>
    public static IEnumerable<Cure> OnTheFloor(Asked asked)
    {
        FieldChange[] changes =
        [
            .. asked
                .AllSpecs.Where(i => Math.Abs(asked.Rig.Rows[i].FloorLevel) > 1e-6)
                .Select(i => RigCure.LengthUp(asked.Rig, Asked.Row(i, "floorLevel"), 0))
                .OfType<FieldChange>(),
        ];
        return changes.Length > 0 ? [Cure.Of(changes)] : [];
    }

    /// <summary>Lines of staggered pots farther apart.</summary>
    public static IEnumerable<Cure> WiderLines(Asked asked)
    {
        int[] staggered = [.. asked.Specs.Where(i => asked.Rig.Rows[i].Arrangement == Arrangement.Staggered)];
        return Asked.Each(
            staggered,
            i =>
                RigCure.LengthUp(
                    asked.Rig,
                    Asked.Row(i, "lineDistance"),
                    asked.Layout.Rows.First(r => r.SpecIndex == i).Pot.Width
                )
        );
    }

    /// <summary>Drains on the other side of the stands.</summary>
    public static IEnumerable<Cure> OtherSide(Asked asked)
    {
        foreach (var (side, word) in new[] { (Side.Middle, "middle"), (Side.Front, "front"), (Side.Back, "back") })
        {
            if (asked.Specs.Any(i => asked.Rig.Rows[i].DrainSide != side))
            {
                yield return Cure.Of([.. asked.Specs.Select(i => Set.To(Asked.Row(i, "drainSide"), word))]);
            }
        }
    }
}
