using System.Reflection;
using System.Text;
using Dripwright.Store.Ground;
using Dripwright.Store.Tests.Places;

namespace Dripwright.Store.Tests;

public sealed class HandInAFile() : HandTests(new SqlitePlaces());

public sealed class HandOnAServer() : HandTests(new PostgresPlaces());

/// <summary>Whose hand changes a garden, and what that may do.</summary>
public abstract class HandTests(ITestPlaces places) : IAsyncDisposable
{
    // What only reads, or is no call to the garden itself.
    private static readonly string[] s_reading =
    [
        "As",
        "BinAsync",
        "CatalogueAsync",
        "CatalogueDraftAsync",
        "DiskUseAsync",
        "DisposeAsync",
        "DocumentsAsync",
        "DraftAsync",
        "OnHandAsync",
        "OnHandDraftAsync",
        "RevisionAsync",
        "RevisionsAsync",
        "RigsAsync",
        "SettingsAsync",
        "StepsAsync",
        "Watch",
    ];

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask DisposeAsync()
    {
        await places.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    [Fact]
    public async Task Every_step_and_every_change_carries_the_name_of_who_made_it()
    {
        await using var garden = await Garden.OpenAsync(places.New(), stop: Stop);
        var (ada, bo) = (garden.As(Hand("Ada")), garden.As(Hand("Bo")));
        var rig = await ada.AddRigAsync("Bench", "{}", Stop);
        var draft = Kept(await bo.KeepDraftAsync(rig.Id, "{ }", rig.Version, "a space", Stop));
        Assert.Equal("Bo", draft.ChangedBy);
        draft = Kept(await ada.UndoAsync(draft.Id, draft.Version, Stop));
        Assert.Equal("Ada", draft.ChangedBy);
        draft = Kept(await garden.RedoAsync(draft.Id, draft.Version, Stop));
        Assert.Equal("", draft.ChangedBy);
        Assert.Equal(["Ada", "Bo"], (await garden.StepsAsync(rig.Id, Stop)).Select(step => step.Who));

        await bo.RenameAsync(rig.Id, "Long bench", Stop);
        Assert.Equal("Bo", Assert.Single(await garden.RigsAsync(Stop)).ChangedBy);
        await ada.RemoveRigAsync(rig.Id, Stop);
        Assert.Equal("Ada", Assert.Single(await garden.BinAsync(Stop)).ChangedBy);
        await bo.RestoreRigAsync(rig.Id, Stop);
        Assert.Equal("Bo", Assert.Single(await garden.RigsAsync(Stop)).ChangedBy);
    }

    [Fact]
    public async Task Nobody_saves_a_revision_in_the_name_of_another()
    {
        await using var garden = await Garden.OpenAsync(places.New(), stop: Stop);
        var onHand = await garden.OnHandDraftAsync(Stop);
        var draft = Kept(await garden.KeepDraftAsync(onHand.Id, "[ ]", onHand.Version, "counted", Stop));
        var saved = await garden.As(Hand("Ada")).SaveRevisionAsync(draft.Id, draft.Version, "Bo", "", Stop);
        Assert.Equal("Ada", Assert.IsType<RevisionOutcome.Saved>(saved).Revision.Who);
    }

    [Fact]
    public async Task A_hand_does_what_it_may_and_nothing_else_whatever_is_called()
    {
        await using var garden = await Garden.OpenAsync(places.New(), stop: Stop);
        var rig = await garden.AddRigAsync("Bench", """{ "format": 1, "rows": [ { "pots": 4 } ] }""", Stop);
        rig = Kept(await garden.KeepDraftAsync(rig.Id, rig.Text + " ", rig.Version, "a space", Stop));
        rig = Kept(await garden.UndoAsync(rig.Id, rig.Version, Stop));
        var gone = await garden.AddRigAsync("Old", "{}", Stop);
        await garden.RemoveRigAsync(gone.Id, Stop);
        var onHand = await garden.OnHandDraftAsync(Stop);
        var brief = await garden.AddDocumentAsync(GardenHand.Brief, "Brief", "{}", Stop);
        var calls = Calls(rig, gone.Id, onHand, brief, Path.Combine(Path.GetTempPath(), $"never-{Guid.NewGuid():N}"));
        foreach (var act in Enum.GetValues<GardenAct>())
        {
            var before = await Content(garden);
            var hand = garden.As(new GardenHand("Ada", other => other != act));
            foreach (var (name, needs, call) in calls.Where(call => call.Needs == act))
            {
                Assert.True(await IsRefused(() => call(hand)), $"{name} needs {needs}");
                Assert.Equal(before, await Content(garden));
            }
        }

        // Whatever the garden can do is either said to be reading or was tried above.
        var all = typeof(Garden)
            .GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly)
            .Where(method => !method.IsSpecialName)
            .Select(method => method.Name)
            .Distinct(StringComparer.Ordinal)
            .Order(StringComparer.Ordinal);
        var known = s_reading.Concat(calls.Select(call => call.Name.Split(' ')[0])).Distinct(StringComparer.Ordinal);
        Assert.Equal(all, known.Order(StringComparer.Ordinal));

        // And with the right each is done.
        foreach (var (name, _, call) in calls.Where(call => call.Needs is GardenAct.Count or GardenAct.Suggest))
        {
            Assert.False(await IsRefused(() => call(garden)), name);
        }
    }

    [Fact]
    public async Task A_right_that_is_taken_away_ends_at_once()
    {
        await using var garden = await Garden.OpenAsync(places.New(), stop: Stop);
        var may = true;
        var hand = garden.As(new GardenHand("Ada", _ => may));
        var rig = await hand.AddRigAsync("Bench", "{}", Stop);
        may = false;
        Assert.IsType<DraftOutcome.Refused>(await hand.KeepDraftAsync(rig.Id, "{ }", rig.Version, "late", Stop));
        Assert.Equal("{}", (await garden.DraftAsync(rig.Id, Stop))!.Text);
    }

    [Fact]
    public async Task What_one_hand_changes_every_other_hears()
    {
        await using var garden = await Garden.OpenAsync(places.New(), stop: Stop);
        var (ada, bo) = (garden.As(Hand("Ada")), garden.As(Hand("Bo")));
        List<GardenEvent> heard = [];
        using (bo.Watch(change => heard.Add(change.Event)))
        {
            await ada.AddRigAsync("Bench", "{}", Stop);
        }

        await ada.AddRigAsync("Other", "{}", Stop);
        await ada.DisposeAsync();
        Assert.Equal([GardenEvent.List], heard);
        // Letting go of a hand does not close the garden.
        Assert.Equal(2, (await bo.RigsAsync(Stop)).Count);
    }

    private static GardenHand Hand(string who) => new(who, _ => true);

    private static Draft Kept(DraftOutcome outcome) => Assert.IsType<DraftOutcome.Kept>(outcome).Draft;

    private static IReadOnlyList<(string Name, GardenAct Needs, Func<Garden, Task> Call)> Calls(
        Draft rig,
        int gone,
        Draft onHand,
        Draft brief,
        string path
    ) =>
        [
            ("AddRigAsync", GardenAct.Edit, at => at.AddRigAsync("New", "{}", Stop)),
            ("AddDocumentAsync rig", GardenAct.Edit, at => at.AddDocumentAsync("log", "New", "{}", Stop)),
            (
                "AddDocumentAsync brief",
                GardenAct.Suggest,
                at => at.AddDocumentAsync(GardenHand.Brief, "New", "{}", Stop)
            ),
            ("KeepDraftAsync rig", GardenAct.Edit, at => at.KeepDraftAsync(rig.Id, "x", rig.Version, "x", Stop)),
            (
                "KeepDraftAsync brief",
                GardenAct.Suggest,
                at => at.KeepDraftAsync(brief.Id, "x", brief.Version, "x", Stop)
            ),
            (
                "KeepDraftAsync on-hand",
                GardenAct.Count,
                at => at.KeepDraftAsync(onHand.Id, "[ ]", onHand.Version, "x", Stop)
            ),
            ("UndoAsync", GardenAct.Edit, at => at.UndoAsync(rig.Id, rig.Version, Stop)),
            ("RedoAsync", GardenAct.Edit, at => at.RedoAsync(rig.Id, rig.Version, Stop)),
            ("GoToStepAsync", GardenAct.Edit, at => at.GoToStepAsync(rig.Id, 2, rig.Version, Stop)),
            ("SaveRevisionAsync rig", GardenAct.Edit, at => at.SaveRevisionAsync(rig.Id, rig.Version, "", "", Stop)),
            (
                "SaveRevisionAsync on-hand",
                GardenAct.Count,
                at => at.SaveRevisionAsync(onHand.Id, onHand.Version + 1, "", "", Stop)
            ),
            ("RenameAsync", GardenAct.Edit, at => at.RenameAsync(rig.Id, "New", Stop)),
            ("RemoveRigAsync", GardenAct.Edit, at => at.RemoveRigAsync(rig.Id, Stop)),
            ("RestoreRigAsync", GardenAct.Edit, at => at.RestoreRigAsync(gone, Stop)),
            ("EmptyBinAsync", GardenAct.EmptyBin, at => at.EmptyBinAsync(stop: Stop)),
            (
                "KeepSettingsAsync",
                GardenAct.Edit,
                at => at.KeepSettingsAsync(new GardenSettings { Name = "New" }, Stop)
            ),
            ("ImportAsync", GardenAct.Edit, at => at.ImportAsync(new MemoryStream("{}"u8.ToArray()), "x", Stop)),
            ("ExportAsync", GardenAct.TakeAway, at => at.ExportAsync(new MemoryStream(), Stop)),
            ("BackupAsync", GardenAct.TakeAway, at => at.BackupAsync(path, stop: Stop)),
            ("RestoreAsync", GardenAct.Restore, at => at.RestoreAsync(path, Stop)),
        ];

    private static async Task<bool> IsRefused(Func<Task> call)
    {
        try
        {
            var work = call();
            await work;
            return work
                is Task<DraftOutcome> { Result: DraftOutcome.Refused }
                    or Task<RevisionOutcome> { Result: RevisionOutcome.Refused };
        }
        catch (GardenException trouble) when (trouble.Kind == TroubleKind.NotAllowed)
        {
            return true;
        }
    }

    private static async Task<string> Content(Garden garden)
    {
        var text = new StringBuilder().Append((await garden.SettingsAsync(Stop)).Name);
        foreach (var one in (await garden.DocumentsAsync(null, Stop)).Concat(await garden.BinAsync(Stop)))
        {
            text.AppendLine(one.ToString());
            foreach (var step in await garden.StepsAsync(one.Id, Stop))
            {
                text.AppendLine(step.ToString());
            }
        }

        return text.ToString();
    }
}
