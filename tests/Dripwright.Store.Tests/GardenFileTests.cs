using System.Text;
using Dripwright.Engine.Units;
using Dripwright.Store.Ground;
using Dripwright.Store.Tests.Places;

namespace Dripwright.Store.Tests;

public sealed class GardenFilesInAFile() : GardenFileTests(new SqlitePlaces());

public sealed class GardenFilesOnAServer() : GardenFileTests(new PostgresPlaces());

/// <summary>Handing a garden out as one file, and taking one in.</summary>
public abstract class GardenFileTests(ITestPlaces places) : IAsyncDisposable
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask DisposeAsync()
    {
        await places.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    [Fact]
    public async Task A_garden_taken_in_by_an_empty_one_is_handed_out_the_same()
    {
        var clock = new StoppedClock(new DateTime(2026, 4, 1, 8, 30, 0, DateTimeKind.Utc));
        await using var garden = await Garden.OpenAsync(places.New(), clock, Stop);
        await Fill(garden);
        var file = await Out(garden);
        await using var other = await Garden.OpenAsync(places.New(), clock, Stop);
        var taken = await In(other, file);
        Assert.Equal((2, 2), (taken.Rigs, taken.Others));
        Assert.Empty(taken.Remarks);
        Assert.Equal(file, await Out(other));
        Assert.Equal("My pump", (await other.CatalogueAsync(Stop)).Catalogue.Pumps["mine"].Name);
        Assert.Single(await other.BinAsync(Stop));
    }

    [Fact]
    public async Task A_garden_in_use_keeps_its_own_and_gains_the_rest_under_free_names()
    {
        await using var garden = await Garden.OpenAsync(places.New(), stop: Stop);
        await Fill(garden);
        var file = await Out(garden);
        var taken = await In(garden, file);
        Assert.Equal((2, 1), (taken.Rigs, taken.Others));
        Assert.Equal(5, taken.Remarks.Count);
        Assert.Equal(["Bench", "Bench (2)"], (await garden.RigsAsync(Stop)).Select(rig => rig.Name));
        Assert.Equal(2, (await garden.BinAsync(Stop)).Count);
        var newest = (await garden.RigsAsync(Stop))[1];
        Assert.Equal(2, newest.Revisions);
        Assert.Equal("{ half", (await garden.DraftAsync(newest.Id, Stop))!.Text);
    }

    [Theory]
    [InlineData("", "line 1")]
    [InlineData("[]", "line 1")]
    [InlineData("{\n\"rows\": []}", "line 2")]
    [InlineData("""{ "gardenFormat": 2, "settings": {}, "documents": [] }""", "format 2")]
    [InlineData(
        """{ "gardenFormat": 1, "settings": {}, "documents": [ { "kind": "rig", "name": "x" } ] }""",
        "documents[0]"
    )]
    [InlineData(
        """{ "gardenFormat": 1, "settings": {}, "documents": [ { "kind": "Rig!", "name": "x", "draft": "" } ] }""",
        "documents[0].kind"
    )]
    [InlineData(
        """{ "gardenFormat": 1, "settings": {}, "documents": [ { "kind": "rig", "name": "x", "draft": "a\u0000b" } ] }""",
        "documents[0].draft"
    )]
    [InlineData(
        """
            { "gardenFormat": 1, "settings": {}, "documents": [
              { "kind": "rig", "name": "x", "draft": "", "revisions": [ { "number": 2, "text": "" } ] } ] }
            """,
        "documents[0].revisions[0].number"
    )]
    [InlineData(
        """
            { "gardenFormat": 1, "settings": {}, "documents": [
              { "kind": "catalogue", "name": "x", "draft": "" }, { "kind": "catalogue", "name": "y", "draft": "" } ] }
            """,
        "catalogue"
    )]
    [InlineData("""{ "gardenFormat": 1, "settings": null, "documents": [] }""", "settings")]
    [InlineData("""{ "gardenFormat": 1, "settings": {}, "documents": [ null ] }""", "documents[0]")]
    [InlineData("""{ "gardenFormat": 1, "settings": { "more": { "a": null } }, "documents": [] }""", "settings.more")]
    [InlineData(
        """
            { "gardenFormat": 1, "settings": {}, "documents": [
              { "kind": "rig", "name": "x", "draft": "", "revisions": [ null ] } ] }
            """,
        "documents[0].revisions[0]"
    )]
    public async Task What_is_wrong_with_a_file_is_told_with_its_place_and_nothing_is_taken_in(
        string file,
        string place
    )
    {
        await using var garden = await Garden.OpenAsync(places.New(), stop: Stop);
        var wrong = await Assert.ThrowsAsync<GardenException>(() => In(garden, file));
        Assert.Equal(TroubleKind.Refused, wrong.Kind);
        Assert.StartsWith("yard.json: ", wrong.Message, StringComparison.Ordinal);
        Assert.Contains(place, wrong.Message, StringComparison.Ordinal);
        Assert.Empty(await garden.RigsAsync(Stop));
    }

    private static async Task Fill(Garden garden)
    {
        await garden.KeepSettingsAsync(new GardenSettings { Name = "Yard", Units = UnitSystem.Metric }, Stop);
        var catalogue = await garden.CatalogueDraftAsync(Stop);
        const string own = """{ "pumps": [ { "key": "mine", "basedOn": "pump-800gph", "name": "My pump" } ] }""";
        await garden.KeepDraftAsync(catalogue.Id, own, catalogue.Version, "", Stop);
        await garden.SaveRevisionAsync(catalogue.Id, catalogue.Version + 1, "Jo", "", Stop);
        var bench = await garden.AddRigAsync("Bench", "{}", Stop);
        await garden.SaveRevisionAsync(bench.Id, 1, "Jo", "first, with ½ \"quotes\"", Stop);
        await garden.KeepDraftAsync(bench.Id, "{ }\r\n", 1, "", Stop);
        await garden.SaveRevisionAsync(bench.Id, 2, "", "", Stop);
        await garden.KeepDraftAsync(bench.Id, "{ half", 2, "", Stop);
        var old = await garden.AddRigAsync("Old bench", "{}", Stop);
        await garden.RemoveRigAsync(old.Id, Stop);
        await garden.AddDocumentAsync("log", "Spring", "sown 🌱", Stop);
    }

    private static async Task<string> Out(Garden garden)
    {
        using var file = new MemoryStream();
        await garden.ExportAsync(file, Stop);
        return Encoding.UTF8.GetString(file.ToArray());
    }

    private static Task<Imported> In(Garden garden, string file) =>
        garden.ImportAsync(new MemoryStream(Encoding.UTF8.GetBytes(file)), "yard.json", Stop);
}
