using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;
using Dripwright.Store.Ground;
using Dripwright.Store.Tests.Places;

namespace Dripwright.Store.Tests;

public sealed class RevisionsInAFile() : RevisionTests(new SqlitePlaces());

public sealed class RevisionsOnAServer() : RevisionTests(new PostgresPlaces());

/// <summary>Saved revisions, the own catalogue, parts on hand and settings.</summary>
public abstract class RevisionTests(ITestPlaces places) : IAsyncDisposable
{
    private static readonly DateTime s_noon = new(2026, 3, 1, 12, 0, 0, DateTimeKind.Utc);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask DisposeAsync()
    {
        await places.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    [Fact]
    public async Task A_revision_keeps_who_when_why_and_the_text_to_the_letter()
    {
        await using var garden = await Garden.OpenAsync(places.New(), new StoppedClock(s_noon), Stop);
        const string text = "{ \"rows\": [ { \"pots\": 6 } ] } // ½ inch hose\r\n";
        var draft = await garden.AddRigAsync("Bench", text, Stop);
        var saved = Saved(await garden.SaveRevisionAsync(draft.Id, draft.Version, "Jo", "as built", Stop));
        Assert.Equal(new Revision(draft.Id, 1, s_noon, "Jo", "as built", text), saved);
        var read = await garden.RevisionAsync(draft.Id, 1, Stop);
        Assert.Equal(saved, read);
        Assert.Equal(DateTimeKind.Utc, read!.At.Kind);
        Assert.Null(await garden.RevisionAsync(draft.Id, 2, Stop));
        Assert.Equal(1, Assert.Single(await garden.RigsAsync(Stop)).Revisions);
    }

    [Fact]
    public async Task A_draft_with_a_fault_is_kept_but_not_saved_as_a_revision()
    {
        await using var garden = await Garden.OpenAsync(places.New(), stop: Stop);
        var draft = await garden.AddRigAsync("Bench", "{ \"rows\": [ { \"spacing\": \"1 foots\" } ] }", Stop);
        var faulty = Assert.IsType<RevisionOutcome.Faulty>(
            await garden.SaveRevisionAsync(draft.Id, draft.Version, "Jo", "", Stop)
        );
        Assert.Equal("rows[0].spacing", Assert.Single(faulty.Faults).Path);
        Assert.Empty(await garden.RevisionsAsync(draft.Id, Stop));
        Assert.Equal(draft, await garden.DraftAsync(draft.Id, Stop));
    }

    [Fact]
    public async Task Each_revision_says_what_it_changed_in_the_growers_words()
    {
        await using var garden = await Garden.OpenAsync(places.New(), stop: Stop);
        var draft = await garden.AddRigAsync("Bench", "{ \"rows\": [ { \"pots\": 6 } ] }", Stop);
        Saved(await garden.SaveRevisionAsync(draft.Id, draft.Version, "", "", Stop));
        draft = Kept(
            await garden.KeepDraftAsync(
                draft.Id,
                "{ \"rows\": [ { \"pots\": 8, \"spacing\": \"14 in\" } ] }",
                draft.Version,
                "",
                Stop
            )
        );
        Saved(await garden.SaveRevisionAsync(draft.Id, draft.Version, "", "two more", Stop));
        var same = await garden.SaveRevisionAsync(draft.Id, draft.Version, "", "again", Stop);
        Assert.Equal("two more", Assert.IsType<RevisionOutcome.Unchanged>(same).Newest.Note);
        var lines = await garden.RevisionsAsync(draft.Id, Stop);
        Assert.Equal([2, 1], lines.Select(line => line.Revision.Number));
        Assert.Contains("row 1, pots: 6 → 8", lines[0].Changes.Select(change => change.ToString()));
        Assert.Contains(lines[0].Changes, change => change.Path == "rows[0].spacing" && change.After == "14 in");
        Assert.Empty(lines[1].Changes);
    }

    [Fact]
    public async Task What_another_page_changed_is_not_saved_unseen()
    {
        await using var garden = await Garden.OpenAsync(places.New(), stop: Stop);
        var draft = await garden.AddRigAsync("Bench", "{}", Stop);
        var other = Kept(await garden.KeepDraftAsync(draft.Id, "{ }", draft.Version, "", Stop));
        var late = await garden.SaveRevisionAsync(draft.Id, draft.Version, "", "", Stop);
        Assert.Equal(other, Assert.IsType<RevisionOutcome.Overtaken>(late).Current);
    }

    [Fact]
    public async Task Of_pages_that_save_at_once_one_saves_and_the_others_find_it_saved()
    {
        await using var garden = await Garden.OpenAsync(places.New(), stop: Stop);
        var draft = await garden.AddRigAsync("Bench", "{}", Stop);
        var all = await Task.WhenAll(
            Enumerable.Range(0, 6).Select(_ => garden.SaveRevisionAsync(draft.Id, draft.Version, "", "", Stop))
        );
        Assert.Single(all.OfType<RevisionOutcome.Saved>());
        Assert.Equal(5, all.OfType<RevisionOutcome.Unchanged>().Count());
    }

    [Fact]
    public async Task The_own_catalogue_is_in_force_once_saved_and_a_faulty_one_never()
    {
        await using var garden = await Garden.OpenAsync(places.New(), stop: Stop);
        Assert.Equal(0, (await garden.CatalogueAsync(Stop)).Revision);
        var draft = await garden.CatalogueDraftAsync(Stop);
        draft = Kept(await garden.KeepDraftAsync(draft.Id, "{ \"pumps\": [ { ", draft.Version, "", Stop));
        Assert.IsType<RevisionOutcome.Faulty>(await garden.SaveRevisionAsync(draft.Id, draft.Version, "", "", Stop));
        const string own = """{ "pumps": [ { "key": "mine", "basedOn": "pump-800gph", "name": "My pump" } ] }""";
        draft = Kept(await garden.KeepDraftAsync(draft.Id, own, draft.Version, "", Stop));
        Saved(await garden.SaveRevisionAsync(draft.Id, draft.Version, "", "", Stop));
        var catalogue = await garden.CatalogueAsync(Stop);
        Assert.Equal("My pump", catalogue.Catalogue.Pumps["mine"].Name);
        var rig = await garden.AddRigAsync("Bench", """{ "pump": { "model": "mine" } }""", Stop);
        Saved(await garden.SaveRevisionAsync(rig.Id, rig.Version, "", "", Stop));
    }

    [Fact]
    public async Task Parts_on_hand_are_read_like_those_of_a_rig_file()
    {
        await using var garden = await Garden.OpenAsync(places.New(), stop: Stop);
        Assert.Empty(await garden.OnHandAsync(Stop));
        var draft = await garden.OnHandDraftAsync(Stop);
        draft = Kept(await garden.KeepDraftAsync(draft.Id, """[ { "part": "no-such" } ]""", draft.Version, "", Stop));
        var faulty = Assert.IsType<RevisionOutcome.Faulty>(
            await garden.SaveRevisionAsync(draft.Id, draft.Version, "", "", Stop)
        );
        Assert.Equal(("onHand[0].part", 1), (faulty.Faults[0].Path, faulty.Faults[0].Line));
        const string have = """[ { "part": "pump-800gph", "count": 2 } ]""";
        draft = Kept(await garden.KeepDraftAsync(draft.Id, have, draft.Version, "", Stop));
        Saved(await garden.SaveRevisionAsync(draft.Id, draft.Version, "", "", Stop));
        Assert.Equal(new OnHand { Part = "pump-800gph", Count = 2 }, Assert.Single(await garden.OnHandAsync(Stop)));
    }

    [Fact]
    public async Task Settings_are_kept_and_an_empty_name_is_refused()
    {
        var place = places.New();
        var settings = new GardenSettings
        {
            Name = "Yard",
            Units = UnitSystem.Metric,
            More = new Dictionary<string, string> { ["paper"] = "a4" },
        };
        await using (var garden = await Garden.OpenAsync(place, stop: Stop))
        {
            Assert.Equal(UnitSystem.Us, (await garden.SettingsAsync(Stop)).Units);
            await garden.KeepSettingsAsync(settings, Stop);
            await Assert.ThrowsAsync<GardenException>(() =>
                garden.KeepSettingsAsync(settings with { Name = "" }, Stop)
            );
        }

        await using (var garden = await Garden.OpenAsync(place, stop: Stop))
        {
            var read = await garden.SettingsAsync(Stop);
            Assert.Equal(("Yard", UnitSystem.Metric, "a4"), (read.Name, read.Units, read.More["paper"]));
        }
    }

    [Fact]
    public async Task Other_rooms_keep_documents_by_the_same_rules()
    {
        await using var garden = await Garden.OpenAsync(places.New(), stop: Stop);
        var log = await garden.AddDocumentAsync("log", "Spring", "sown", Stop);
        log = Kept(await garden.KeepDraftAsync(log.Id, "sown, watered", log.Version, "", Stop));
        Saved(await garden.SaveRevisionAsync(log.Id, log.Version, "", "", Stop));
        Assert.Equal(log.Id, Assert.Single(await garden.DocumentsAsync("log", Stop)).Id);
        Assert.Empty(await garden.RigsAsync(Stop));
        Assert.True(await garden.RenameAsync(log.Id, "Summer", Stop));
        Assert.Equal("Summer", (await garden.DraftAsync(log.Id, Stop))!.Name);
        await Assert.ThrowsAsync<ArgumentException>(() => garden.AddDocumentAsync("Log 1", "x", "", Stop));
        await Assert.ThrowsAsync<ArgumentException>(() =>
            garden.AddDocumentAsync(DocumentKinds.Catalogue, "x", "", Stop)
        );
        Assert.False(await garden.RemoveRigAsync((await garden.CatalogueDraftAsync(Stop)).Id, Stop));
    }

    private static Draft Kept(DraftOutcome outcome) => Assert.IsType<DraftOutcome.Kept>(outcome).Draft;

    private static Revision Saved(RevisionOutcome outcome) => Assert.IsType<RevisionOutcome.Saved>(outcome).Revision;
}
