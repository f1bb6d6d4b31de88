using Dripwright.Engine.Findings;

namespace Dripwright.Engine.Curing.Ideas;

/// <summary>What a grower would think of for each rule, the likeliest first. Whether it cures is not known here: it is tried.</summary>
internal static class IdeaBook
{
    private delegate IEnumerable<Cure> Idea(Asked asked);

    private static readonly Idea[] s_thirst =
    [
        ClockIdeas.Enough,
        FeedIdeas.OpenUp,
        FeedIdeas.LargerEmitter,
        FeedIdeas.MoreEmitters,
        ClockIdeas.Longer,
        ClockIdeas.Oftener,
        FeedIdeas.StrongerPump,
        ClockIdeas.Always,
        FeedIdeas.StrongerOpened,
        FeedIdeas.EmitterForLowPressure,
    ];

    private static readonly Idea[] s_full =
    [
        DrainIdeas.Wider,
        DrainIdeas.Steeper,
        DrainIdeas.OtherExit,
        DrainIdeas.WiderSteeper,
        FeedIdeas.SmallerEmitter,
        FeedIdeas.Throttle,
        FeedIdeas.SmallerPump,
    ];

    private static readonly Idea[] s_freeboard =
    [
        TankIdeas.FillLess,
        FeedIdeas.CheckValve,
        TankIdeas.Larger,
        DrainIdeas.Steeper,
    ];

    private static readonly Idea[] s_inlet =
    [
        TankIdeas.KeepMore,
        TankIdeas.LowerInlet,
        TankIdeas.FillMore,
        TankIdeas.FillMoreKept,
        TankIdeas.Larger,
        FeedIdeas.SmallerPump,
    ];

    private static readonly Idea[] s_weak =
    [
        StandIdeas.Stiffer,
        RowIdeas.ShorterModules,
        StandIdeas.Stiffest,
        StandIdeas.StiffestShort,
        StandIdeas.LowTies,
        RowIdeas.Lower,
        RowIdeas.Wider,
    ];

    private static readonly Idea[] s_water = [NutrientIdeas.PurerWater, NutrientIdeas.PurerWithAcid];

    private static readonly Idea[] s_recipe =
    [
        NutrientIdeas.UsualSalts,
        NutrientIdeas.OtherAcid,
        NutrientIdeas.PurerWater,
        NutrientIdeas.UsualTarget,
        NutrientIdeas.UsualSaltsWith,
        NutrientIdeas.PurerWithAcid,
        NutrientIdeas.HarderWater,
    ];

    private static readonly Idea[] s_stock =
    [
        NutrientIdeas.ThinnerStock,
        NutrientIdeas.WarmerStore,
        NutrientIdeas.OtherAcid,
        NutrientIdeas.UsualSalts,
        NutrientIdeas.StraightIn,
    ];

    private static readonly Dictionary<string, Idea[]> s_book = new()
    {
        ["feed-unsolved"] = [FeedIdeas.OpenUp, FeedIdeas.StrongerPump],
        ["no-water"] =
        [
            FeedIdeas.OpenUp,
            FeedIdeas.StrongerPump,
            FeedIdeas.StrongerOpened,
            TankIdeas.SetHigher,
            FeedIdeas.LowerLine,
            FeedIdeas.ShorterHeader,
            FeedIdeas.LowerDrip,
        ],
        ["pot-dry"] =
        [
            FeedIdeas.OpenUp,
            FeedIdeas.StrongerPump,
            FeedIdeas.StrongerOpened,
            FeedIdeas.LowerLine,
            FeedIdeas.LowerDrip,
            FeedIdeas.EvenRows,
            FeedIdeas.SmallerEmitter,
            FeedIdeas.WiderBoth,
            TankIdeas.SetHigher,
            FeedIdeas.FewerEmitters,
        ],
        ["valves-shut"] = [FeedIdeas.OpenUp],
        ["plants-starve"] = s_thirst,
        ["plants-thirst"] = s_thirst,
        ["drain-share-low"] = s_thirst,
        ["uniformity-poor"] =
        [
            FeedIdeas.OpenUp,
            FeedIdeas.AlikeEmitter,
            FeedIdeas.OtherEntry,
            FeedIdeas.WiderLine,
            FeedIdeas.MoreEmitters,
            FeedIdeas.StrongerPump,
            FeedIdeas.SmallerEmitter,
            FeedIdeas.WiderBoth,
            FeedIdeas.WiderTubes,
            FeedIdeas.EvenRows,
        ],
        ["emitter-under-range"] =
        [
            FeedIdeas.EmitterForLowPressure,
            FeedIdeas.OpenUp,
            FeedIdeas.StrongerPump,
            FeedIdeas.WiderLine,
            FeedIdeas.StrongerOpened,
            FeedIdeas.SmallerEmitter,
            FeedIdeas.FewerEmitters,
            FeedIdeas.WiderBoth,
            TankIdeas.SetHigher,
            FeedIdeas.EvenRows,
        ],
        ["emitter-over-range"] =
        [
            FeedIdeas.Throttle,
            FeedIdeas.LetBack,
            FeedIdeas.SmallerPump,
            FeedIdeas.EmitterForHighPressure,
            FeedIdeas.LargerEmitter,
        ],
        ["line-unprimed"] =
        [
            FeedIdeas.LowerLine,
            FeedIdeas.OpenUp,
            FeedIdeas.StrongerPump,
            FeedIdeas.SmallerEmitter,
            FeedIdeas.HigherDrip,
            FeedIdeas.WiderBoth,
            FeedIdeas.StrongerOpened,
            FeedIdeas.EvenRows,
            TankIdeas.SetHigher,
        ],
        ["pump-off-curve"] = [FeedIdeas.Throttle, FeedIdeas.StrongerPump, FeedIdeas.SmallerEmitter],
        ["velocity-high"] =
        [
            FeedIdeas.WiderLine,
            FeedIdeas.WiderHeader,
            FeedIdeas.WiderBoth,
            FeedIdeas.SmallerPump,
            FeedIdeas.Throttle,
            FeedIdeas.SmallerEmitter,
            FeedIdeas.FewerEmitters,
        ],
        ["low-row-runs-off"] =
        [
            FeedIdeas.HigherDrip,
            FeedIdeas.CheckValve,
            FeedIdeas.EvenRows,
            FeedIdeas.LowerLine,
            FeedIdeas.AlikeEmitter,
            RowIdeas.OnTheFloor,
        ],
        ["tank-siphons"] = [FeedIdeas.HigherDrip, FeedIdeas.CheckValve],
        ["lowest-over-mark"] = [TankIdeas.KeepLess, TankIdeas.FillMore, TankIdeas.Larger, TankIdeas.FillMoreKept],
        ["lines-fill-long"] =
        [
            FeedIdeas.CheckValve,
            ClockIdeas.Longer,
            ClockIdeas.FewerLonger,
            FeedIdeas.OpenUp,
            FeedIdeas.StrongerPump,
            ClockIdeas.Always,
        ],
        ["drain-full"] = s_full,
        ["drain-half-full"] = s_full,
        ["drain-level"] = [DrainIdeas.Steeper],
        ["drain-under-rim"] =
        [
            TankIdeas.SetLower,
            RowIdeas.Raise,
            DrainIdeas.OwnDrop,
            DrainIdeas.Flatter,
            TankIdeas.Lower,
            DrainIdeas.CloserBelow,
        ],
        ["drain-drowned"] =
        [
            TankIdeas.FillLess,
            TankIdeas.SetLower,
            RowIdeas.Raise,
            DrainIdeas.OwnDrop,
            DrainIdeas.WiderSteeper,
            DrainIdeas.Flatter,
            DrainIdeas.CloserBelow,
            TankIdeas.Lower,
        ],
        ["pots-pond"] =
        [
            DrainIdeas.FartherBelow,
            DrainIdeas.Wider,
            DrainIdeas.Steeper,
            DrainIdeas.OtherExit,
            DrainIdeas.WiderSteeper,
            FeedIdeas.SmallerEmitter,
            TankIdeas.FillLess,
            RowIdeas.Raise,
            FeedIdeas.Throttle,
            DrainIdeas.OtherOutlet,
        ],
        ["pot-drain-small"] =
        [
            DrainIdeas.OtherOutlet,
            FeedIdeas.SmallerEmitter,
            FeedIdeas.FewerEmitters,
            FeedIdeas.Throttle,
            FeedIdeas.SmallerPump,
            DrainIdeas.FartherBelow,
        ],
        ["drain-unvented"] = [DrainIdeas.Vent],
        ["drain-narrow"] = [DrainIdeas.Wider, FeedIdeas.NarrowerHeader],
        ["drain-under-floor"] =
        [
            RowIdeas.RaiseThese,
            RowIdeas.Raise,
            DrainIdeas.Flatter,
            DrainIdeas.CloserBelow,
            DrainIdeas.OtherExit,
        ],
        ["overflow-on-stop"] = s_freeboard,
        ["freeboard-thin"] = s_freeboard,
        ["inlet-bare"] = s_inlet,
        ["inlet-cover-thin"] = s_inlet,
        ["reservoir-runs-out"] =
        [
            ClockIdeas.Shorter,
            TankIdeas.FillMore,
            TankIdeas.Larger,
            TankIdeas.KeepLess,
            FeedIdeas.SmallerEmitter,
        ],
        ["days-short"] =
        [
            TankIdeas.FillMore,
            TankIdeas.Larger,
            TankIdeas.KeepLess,
            TankIdeas.VisitOftener,
            RowIdeas.FewerPlants,
        ],
        ["hole-on-joint"] =
        [
            RowIdeas.ShiftSpacing,
            RowIdeas.OtherModules,
            RowIdeas.FittedModules,
            FeedIdeas.FewerEmitters,
            FeedIdeas.MoreEmitters,
            FeedIdeas.OtherEntry,
            DrainIdeas.OtherExit,
            DrainIdeas.OtherOutlet,
        ],
        ["fittings-crowd"] =
        [
            FeedIdeas.OtherEntry,
            DrainIdeas.OtherExit,
            RowIdeas.OtherModules,
            RowIdeas.Wider,
            RowIdeas.ShiftSpacing,
        ],
        ["aisle-narrow"] = [RowIdeas.NarrowerAisles],
        ["room-short"] =
        [
            RowIdeas.FittedModules,
            TankIdeas.PastTheEnd,
            RowIdeas.Closer,
            RowIdeas.FewerPots,
            RowIdeas.MoreShorterRows,
            RowIdeas.FewerPlants,
        ],
        ["room-narrow"] =
        [
            RowIdeas.NarrowerAisles,
            RowIdeas.ShallowerStands,
            RowIdeas.FewerRows,
            RowIdeas.WithoutLastRows,
        ],
        ["room-low"] = [RowIdeas.Lower, FeedIdeas.LowerLine, RowIdeas.OnTheFloor],
        ["pots-collide"] = [RowIdeas.Wider, RowIdeas.WiderLines],
        ["row-short"] = [RowIdeas.OwnModules, RowIdeas.Closer],
        ["tank-in-stand"] =
        [
            TankIdeas.PastTheEnd,
            TankIdeas.OtherEnd,
            TankIdeas.SetLower,
            RowIdeas.Raise,
            TankIdeas.Lower,
        ],
        ["stand-narrow"] = [StandIdeas.Deeper, RowIdeas.ShallowerStands],
        ["stand-too-low"] = [RowIdeas.RaiseThese],
        ["cord-short"] =
        [
            PowerIdeas.LongerCord,
            PowerIdeas.NearerOutlet,
            PowerIdeas.OutletOverRim,
            PowerIdeas.NearOverRim,
            TankIdeas.Lower,
        ],
        ["outlet-low"] = [PowerIdeas.OutletOverRim, TankIdeas.SetLower, TankIdeas.Lower],
        ["circuit-load"] = [PowerIdeas.MoveLoads, FeedIdeas.SmallerPump],
        ["barb-unclamped"] = [FeedIdeas.WiderLine, FeedIdeas.WiderBoth],
        ["cut-impossible"] =
        [
            RowIdeas.ShorterModules,
            RowIdeas.Lower,
            RowIdeas.OtherModules,
            FeedIdeas.ShorterHeader,
            RowIdeas.ShiftSpacing,
            DrainIdeas.Wider,
            DrainIdeas.OtherOutlet,
        ],
        ["wire-overloaded"] = [WireIdeas.Stronger, WireIdeas.Slacker, WireIdeas.CloserHooks, WireIdeas.Together],
        ["wire-sags"] = [WireIdeas.Tighter, WireIdeas.CloserHooks, WireIdeas.Together],
        ["hook-pulls-out"] =
        [
            WireIdeas.BoltedEnds,
            WireIdeas.StrongerHooks,
            WireIdeas.CloserHooks,
            WireIdeas.StrongerCloserHooks,
            WireIdeas.Slacker,
        ],
        ["wire-under-pots"] = [WireIdeas.Higher, RowIdeas.Lower],
        ["wire-over-room"] = [WireIdeas.Higher],
        ["lamps-close"] = [WireIdeas.LampsApart],
        ["stand-falls"] = s_weak,
        ["stand-weak"] = s_weak,
        ["stand-sags"] = s_weak,
        ["stand-joint-slips"] = [StandIdeas.Stiffer, StandIdeas.BetterJoints, StandIdeas.DeeperSockets, .. s_weak],
        ["drain-pools"] =
        [
            StandIdeas.Stiffer,
            DrainIdeas.Steeper,
            RowIdeas.ShorterModules,
            StandIdeas.Stiffest,
            StandIdeas.StiffestShort,
        ],
        ["stand-walks"] =
        [
            StandIdeas.Rubber,
            StandIdeas.Tied,
            StandIdeas.Deeper,
            StandIdeas.RubberAndDeeper,
            RowIdeas.Lower,
            StandIdeas.LowTies,
            .. s_weak,
        ],
        ["feet-slip"] = [StandIdeas.Rubber, StandIdeas.Tied, StandIdeas.LowTies],
        ["stand-tips"] = [StandIdeas.Tied, StandIdeas.Deeper, RowIdeas.Lower],
        ["water-gap-large"] = s_water,
        ["water-ec-off"] = s_water,
        ["water-sodium"] = s_water,
        ["water-chloride"] = s_water,
        ["water-boron"] = s_water,
        ["water-iron"] = s_water,
        ["water-alkalinity"] = [NutrientIdeas.OtherAcid, .. s_water],
        ["water-salt"] = s_water,
        ["element-poisons"] = s_recipe,
        ["recipe-unreached"] = s_recipe,
        ["recipe-water-over"] = [NutrientIdeas.PurerWater, NutrientIdeas.PurerWithAcid, .. s_recipe],
        ["recipe-ammonium-share"] = s_recipe,
        ["recipe-chloride"] = s_recipe,
        ["recipe-sodium"] = s_recipe,
        ["recipe-no-acid"] = [NutrientIdeas.OtherAcid, NutrientIdeas.PurerWater, NutrientIdeas.PurerWithAcid],
        ["recipe-acid-overfeeds"] = [NutrientIdeas.OtherAcid, NutrientIdeas.PurerWater, NutrientIdeas.PurerWithAcid],
        ["recipe-chelate-ph"] =
        [
            NutrientIdeas.OtherPh,
            NutrientIdeas.OtherAcid,
            NutrientIdeas.UsualSalts,
            NutrientIdeas.UsualSaltsWith,
            NutrientIdeas.PurerWithAcid,
        ],
        ["recipe-ec-unreached"] = [NutrientIdeas.UsualTarget, NutrientIdeas.OtherStrength, .. s_recipe],
        ["scale-too-coarse"] = [NutrientIdeas.FinerScale, NutrientIdeas.StockTanks],
        ["stock-saturated"] = s_stock,
        ["stock-precipitates"] = s_stock,
        ["stock-neither"] = s_stock,
        ["stock-chelate-acid"] = s_stock,
        ["loop-sodium"] = [NutrientIdeas.PurerWater],
    };

    /// <summary>Changes that may cure a finding: the rule's own first, then of each idea the smallest, then the next of each.</summary>
    public static IEnumerable<Cure> Of(Asked asked)
    {
        HashSet<string> told = [];
        foreach (var cure in asked.Finding.Cures.Where(c => c.Changes.Count > 0))
        {
            if (told.Add(Key(cure)))
            {
                yield return cure;
            }
        }

        List<IEnumerator<Cure>> open =
        [
            .. s_book.GetValueOrDefault(asked.Finding.Rule, []).Distinct().Select(idea => idea(asked).GetEnumerator()),
        ];
        while (open.Count > 0)
        {
            foreach (var idea in open.ToArray())
            {
                if (!idea.MoveNext())
                {
                    open.Remove(idea);
                    idea.Dispose();
                }
                else if (idea.Current.Changes.Count > 0 && told.Add(Key(idea.Current)))
                {
                    yield return idea.Current;
                }
            }
        }
    }

    private static string Key(Cure cure) =>
        string.Join('\n', cure.Changes.Select(c => $"{c.Field}={c.Text}").Order(StringComparer.Ordinal));
}
