using Dripwright.Engine.Layout;
using Dripwright.Engine.Phrases;
using Dripwright.Engine.Printed;
using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Parts;

/// <summary>Counts printed joints and hangers, their filament, screws, clamps and ties of the stand.</summary>
internal static class StandParts
{
    /// <summary>What the keys of filament begin with.</summary>
    public const string Filament = "filament-";

    /// <summary>Catalogue key of what holds a drain where no hanger can be printed.</summary>
    public const string Strap = "pipe-strap";

    /// <summary>Catalogue key of what ties a stand to a wall.</summary>
    public const string TieStrap = "tie-strap";

    /// <summary>[kg] Filament on a spool.</summary>
    private const double Spool = 1;

    public static void Count(PartsTally tally, Rig rig, RigLayout layout, PrintedParts printed)
    {
        foreach (var joints in printed.Places.GroupBy(p => (Key: p.Joints[0].Part, Use: UseOf(p, printed))))
        {
            // "4 × J1, over the legs of the end frames": as the part itself is numbered.
            var numbers = Phrase.Of(
                new Several([.. joints.Select(p => Phrase.Plain($"{Labels.Of(p.Joints.Count)} × {p.Number}"))])
            );
            var count = joints.Sum(p => p.Joints.Count);
            (var key, var use) = joints.Key;
            if (use is null && key == StandLayout.Hanger)
            {
                tally.Add(Strap, count, Phrase.Of("part.where.strap", numbers), note: Phrase.Of("part.note.strap"));
                continue;
            }

            tally.Add(
                key,
                count,
                use is null ? numbers : Phrase.Of("part.where.used", numbers, use),
                note: use is null ? Phrase.Of("part.note.unprintable")
                    : key == StandLayout.Hanger ? Phrase.Of("part.note.print-pipe")
                    : Phrase.Of("part.note.print-tube")
            );
        }

        tally.Add(
            StandLayout.Clamp,
            layout.Stand.Joints.Count(j => j.Part == StandLayout.Clamp),
            Phrase.Of("part.where.clamps", StandLayout.ClampNumber),
            note: Phrase.Of("part.note.clamps")
        );

        // A screw at each end of each tube keeps a stand together that is carried about. Common practice.
        // A brace is held by its clamps.
        var pieces = layout.Stand.Members.Count(m => m.Role != MemberRole.Brace);
        tally.Add("joint-screw", 2 * pieces, Phrase.Of("part.where.screws"));
        CountSmall(tally, layout, printed);
        var strapped = tally.Of(Strap);
        tally.Add("cable-tie", 2 * (layout.Stand.Hangers.Count - strapped), Phrase.Of("part.where.ties.drain"));
        tally.Add(
            "joint-screw",
            layout.Stand.Hangers.Count(h => h.Mount == HangerMount.Leg),
            strapped > 0 ? Phrase.Of("part.where.screws.strap") : Phrase.Of("part.where.screws.hanger")
        );
        tally.Add(
            "cable-tie",
            2 * layout.Stand.Joints.Count(j => j.Part == StandPlacement.Clip),
            Phrase.Of("part.where.ties.clip")
        );
        AddTies(tally, rig, layout);
        AddFilament(tally, rig, printed);
    }

    /// <summary>A tied stand is held at the back of its end frames and of those at the module joints, each by two anchors.</summary>
    private static void AddTies(PartsTally tally, Rig rig, RigLayout layout)
    {
        var ties = rig.Stand.Tied
            ? layout.Rows.Where(row => layout.Stand.Members.Any(m => m.Row == row.Number)).Sum(row => row.Modules + 1)
            : 0;
        tally.Add(TieStrap, ties, Phrase.Of("part.where.tie-strap"));
        tally.Add(
            "wall-anchor",
            2 * ties,
            Phrase.Of("part.where.wall-anchor"),
            note: Phrase.Of("part.note.wall-anchor")
        );
    }

    private static Phrase? UseOf(PrintedJoint place, PrintedParts printed) =>
        printed.Parts.FirstOrDefault(part => part.Place == place)?.Use;

    /// <summary>Small parts, and what holds the feed line: a tie at each line rest, else at each module joint.</summary>
    private static void CountSmall(PartsTally tally, RigLayout layout, PrintedParts printed)
    {
        foreach (var part in printed.Parts.Where(part => part is { Place: null, Key: not null }))
        {
            tally.Add(
                part.Key!,
                part.Count,
                Phrase.Of("part.where.used", part.Number, part.Use),
                note: Phrase.Of("part.note.print")
            );
            if (part.Design.Kind == PrintedKind.ClampBlock)
            {
                // Two screws hold the halves; nut and washers take about 6 mm.
                var least = (2 * part.Design.Box.Size.Z) + 0.006;
                tally.Add(
                    "clamp-screw",
                    2 * part.Count,
                    Phrase.Plain(part.Number),
                    note: Phrase.Of("part.note.clamp-screw", Measured.Millimetres(Math.Ceiling(1000 * least) / 1000))
                );
            }
        }

        var rests = printed
            .Parts.Where(part => part.Design.Kind == PrintedKind.LineRest)
            .SelectMany(part => part.Spots)
            .ToLookup(spot => spot.Row);
        foreach (var row in layout.Rows)
        {
            var rested = rests[row.Number].Count();
            tally.Add("cable-tie", rested, Phrase.Of("part.where.ties.rest"));
            tally.Add(
                "cable-tie",
                rested > 0 ? 0 : (row.Modules + 1) * Math.Min(2, row.Feed.Count),
                Phrase.Of("part.where.ties.joint")
            );
        }
    }

    /// <summary>Whole spools for what is not on hand, printed solid.</summary>
    private static void AddFilament(PartsTally tally, Rig rig, PrintedParts printed)
    {
        if (printed.Made is not { } made)
        {
            return;
        }

        var have = rig.OnHand.GroupBy(h => h.Part).ToDictionary(g => g.Key, g => g.Sum(h => h.Count));
        double volume = 0;
        var pieces = 0;
        foreach (var part in printed.Parts)
        {
            var key = part.Key;
            var held = key is null ? 0 : Math.Min(part.Count, have.GetValueOrDefault(key));
            if (held > 0)
            {
                have[key!] -= held;
            }

            volume += (part.Count - held) * part.Design.MostVolume;
            pieces += key is null ? 0 : part.Count - held;
        }

        if (pieces == 0)
        {
            return;
        }

        var mass = (1 + PrintedParts.Waste) * PrintEstimate.Of(volume, made.Plastic, made.Printer).Mass;
        tally.Add(
            $"{Filament}{made.Plastic.Name.ToLowerInvariant()}",
            (int)Math.Ceiling((mass / Spool) - 1e-9),
            Phrase.Of("part.where.filament"),
            note: Phrase.Of("part.note.filament", Measured.Mass(mass), Measured.Percent(PrintedParts.Waste))
        );
    }
}
