using System.Globalization;
using Dripwright.Store.Ground;
using Dripwright.Store.Tests.Places;

namespace Dripwright.Store.Tests;

public sealed class DraftsInAFile() : DraftTests(new SqlitePlaces());

public sealed class DraftsOnAServer() : DraftTests(new PostgresPlaces());

/// <summary>Drafts, undo and redo, and two pages at once.</summary>
public abstract class DraftTests(ITestPlaces places) : IAsyncDisposable
{
    private const string Half = "{ \"name\": \"Half typed\", \"rows\": [ { \"pots\": 1";

    private static readonly CultureInfo s_plain = CultureInfo.InvariantCulture;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask DisposeAsync()
    {
        await places.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    [Theory]
    [InlineData(Half)]
    [InlineData("")]
    [InlineData("// a comment\r\n\t{ \"name\": \"Ünïcødé 🌱 ½ in\" }  \n\n")]
    public async Task A_draft_is_kept_exactly_as_typed_faults_and_all(string text)
    {
        await using var garden = await Garden.OpenAsync(places.New(), stop: Stop);
        var made = await garden.AddRigAsync("Bench", "{}", Stop);
        var kept = Kept(await garden.KeepDraftAsync(made.Id, text, made.Version, "typed", Stop));
        Assert.Equal(text, kept.Text);
        Assert.Equal(kept, await garden.DraftAsync(made.Id, Stop));
        Assert.Equal(made.Version + 1, kept.Version);
    }

    [Fact]
    public async Task Undo_and_redo_survive_a_restart()
    {
        var place = places.New();
        int id;
        await using (var garden = await Garden.OpenAsync(place, stop: Stop))
        {
            var draft = await garden.AddRigAsync("Bench", "one", Stop);
            id = draft.Id;
            draft = Kept(await garden.KeepDraftAsync(id, "two", draft.Version, "second", Stop));
            draft = Kept(await garden.KeepDraftAsync(id, "three", draft.Version, "third", Stop));
            draft = Kept(await garden.UndoAsync(id, draft.Version, Stop));
            Assert.Equal(("two", "second", true, true), (draft.Text, draft.What, draft.CanUndo, draft.CanRedo));
        }

        await using (var garden = await Garden.OpenAsync(place, stop: Stop))
        {
            var draft = (await garden.DraftAsync(id, Stop))!;
            Assert.Equal("two", draft.Text);
            draft = Kept(await garden.RedoAsync(id, draft.Version, Stop));
            Assert.Equal("three", draft.Text);
            Assert.False(draft.CanRedo);
            draft = Kept(await garden.UndoAsync(id, draft.Version, Stop));
            draft = Kept(await garden.UndoAsync(id, draft.Version, Stop));
            Assert.Equal("one", draft.Text);
            Assert.False(draft.CanUndo);
            var still = Kept(await garden.UndoAsync(id, draft.Version, Stop));
            Assert.Equal(draft, still);
        }
    }

    [Fact]
    public async Task A_page_that_was_overtaken_is_told_and_nothing_is_overwritten()
    {
        await using var garden = await Garden.OpenAsync(places.New(), stop: Stop);
        var both = await garden.AddRigAsync("Bench", "both see this", Stop);
        var first = Kept(await garden.KeepDraftAsync(both.Id, "first page", both.Version, "", Stop));
        var second = await garden.KeepDraftAsync(both.Id, "second page", both.Version, "", Stop);
        Assert.Equal(first, Assert.IsType<DraftOutcome.Overtaken>(second).Current);
        Assert.Equal("first page", (await garden.DraftAsync(both.Id, Stop))!.Text);
        Assert.IsType<DraftOutcome.Overtaken>(await garden.UndoAsync(both.Id, both.Version, Stop));
        Assert.IsType<DraftOutcome.Overtaken>(await garden.RedoAsync(both.Id, both.Version, Stop));
    }

    [Fact]
    public async Task Keeping_what_is_there_already_is_no_step_and_no_conflict()
    {
        await using var garden = await Garden.OpenAsync(places.New(), stop: Stop);
        var made = await garden.AddRigAsync("Bench", "one", Stop);
        var kept = Kept(await garden.KeepDraftAsync(made.Id, "two", made.Version, "", Stop));
        // The answer to the first call was lost, say; the page sends it again.
        Assert.Equal(kept, Kept(await garden.KeepDraftAsync(made.Id, "two", made.Version, "", Stop)));
    }

    [Fact]
    public async Task Of_many_writers_at_once_each_is_kept_or_told_and_none_is_lost()
    {
        const int writers = 6;
        const int each = 8;
        var place = places.New();
        await using var garden = await Garden.OpenAsync(place, stop: Stop);
        // A second object stands for a second process.
        await using var other = await Garden.OpenAsync(place, stop: Stop);
        var made = await garden.AddRigAsync("Bench", "start", Stop);
        var overtaken = 0;
        await Parallel.ForEachAsync(
            Enumerable.Range(0, writers),
            new ParallelOptions { MaxDegreeOfParallelism = writers, CancellationToken = Stop },
            async (writer, stop) =>
            {
                var through = writer % 2 == 0 ? garden : other;
                var version = made.Version;
                for (var n = 0; n < each; n++)
                {
                    DraftOutcome outcome;
                    while (
                        (
                            outcome = await through.KeepDraftAsync(
                                made.Id,
                                string.Create(s_plain, $"{writer}:{n}"),
                                version,
                                "",
                                stop
                            )
                        )
                            is DraftOutcome.Overtaken late
                    )
                    {
                        Interlocked.Increment(ref overtaken);
                        version = late.Current.Version;
                    }

                    version = Kept(outcome).Version;
                }
            }
        );

        var draft = (await garden.DraftAsync(made.Id, Stop))!;
        Assert.Equal(made.Version + writers * each, draft.Version);
        List<string> seen = [draft.Text];
        while (draft.CanUndo)
        {
            draft = Kept(await garden.UndoAsync(made.Id, draft.Version, Stop));
            seen.Add(draft.Text);
        }

        Assert.Equal(writers * each + 1, seen.Distinct().Count());
        Assert.Equal("start", seen[^1]);
        TestContext.Current.TestOutputHelper?.WriteLine(string.Create(s_plain, $"{overtaken} times overtaken"));
    }

    [Fact]
    public async Task A_rig_in_the_bin_cannot_be_written_and_comes_back_whole()
    {
        await using var garden = await Garden.OpenAsync(places.New(), stop: Stop);
        var draft = await garden.AddRigAsync("Bench", "one", Stop);
        draft = Kept(await garden.KeepDraftAsync(draft.Id, "two", draft.Version, "", Stop));
        Assert.True(await garden.RemoveRigAsync(draft.Id, Stop));
        Assert.False(await garden.RemoveRigAsync(draft.Id, Stop));
        Assert.Empty(await garden.RigsAsync(Stop));
        Assert.Equal(draft.Id, Assert.Single(await garden.BinAsync(Stop)).Id);
        Assert.Null(await garden.DraftAsync(draft.Id, Stop));
        Assert.IsType<DraftOutcome.Gone>(await garden.KeepDraftAsync(draft.Id, "x", draft.Version, "", Stop));
        Assert.IsType<DraftOutcome.Gone>(await garden.UndoAsync(draft.Id, draft.Version, Stop));
        Assert.IsType<RevisionOutcome.Gone>(await garden.SaveRevisionAsync(draft.Id, draft.Version, "", "", Stop));
        Assert.True(await garden.RestoreRigAsync(draft.Id, Stop));
        Assert.Equal(draft, await garden.DraftAsync(draft.Id, Stop));
    }

    [Fact]
    public async Task Text_that_not_every_database_gives_back_is_refused()
    {
        await using var garden = await Garden.OpenAsync(places.New(), stop: Stop);
        var made = await garden.AddRigAsync("Bench", "one", Stop);
        foreach (var text in new[] { "nul \0 inside", "half a pair " + (char)0xD83C })
        {
            Assert.IsType<DraftOutcome.Refused>(await garden.KeepDraftAsync(made.Id, text, made.Version, "", Stop));
            Assert.IsType<DraftOutcome.Refused>(await garden.KeepDraftAsync(made.Id, "two", made.Version, text, Stop));
            var wrong = await Assert.ThrowsAsync<GardenException>(() => garden.AddRigAsync("Bench", text, Stop));
            Assert.Equal(TroubleKind.Refused, wrong.Kind);
        }

        await Assert.ThrowsAsync<GardenException>(() => garden.AddRigAsync(" ", "{}", Stop));
    }

    [Fact]
    public async Task A_text_of_one_MiB_is_kept_and_a_longer_one_refused()
    {
        await using var garden = await Garden.OpenAsync(places.New(), stop: Stop);
        var made = await garden.AddRigAsync("Bench", "one", Stop);
        var most = new string('x', Limits.TextBytes);
        var kept = Kept(await garden.KeepDraftAsync(made.Id, most, made.Version, "", Stop));
        Assert.Equal(most, kept.Text);
        Assert.IsType<DraftOutcome.Refused>(await garden.KeepDraftAsync(made.Id, most + "x", kept.Version, "", Stop));
    }

    [Fact]
    public async Task The_oldest_steps_are_forgotten_first_and_the_rest_can_be_undone()
    {
        await using var garden = await Garden.OpenAsync(places.New(), stop: Stop);
        var draft = await garden.AddRigAsync("Bench", "0", Stop);
        var letters = Limits.StepLetters / 20;
        for (var n = 1; n <= 30; n++)
        {
            var text = n.ToString(s_plain).PadRight(letters);
            draft = Kept(await garden.KeepDraftAsync(draft.Id, text, draft.Version, "", Stop));
        }

        var undone = 0;
        while (draft.CanUndo)
        {
            draft = Kept(await garden.UndoAsync(draft.Id, draft.Version, Stop));
            undone++;
        }

        Assert.Equal(19, undone);
        Assert.StartsWith("11 ", draft.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_change_is_told_to_the_other_pages_and_a_failing_page_spoils_nothing()
    {
        await using var garden = await Garden.OpenAsync(places.New(), stop: Stop);
        List<GardenChange> heard = [];
        using var broken = garden.Watch(_ => throw new InvalidOperationException("closing"));
        var watch = garden.Watch(heard.Add);
        var draft = await garden.AddRigAsync("Bench", "one", Stop);
        draft = Kept(await garden.KeepDraftAsync(draft.Id, "two", draft.Version, "", Stop));
        await garden.KeepDraftAsync(draft.Id, "two", draft.Version, "", Stop);
        await garden.UndoAsync(draft.Id, draft.Version, Stop);
        watch.Dispose();
        await garden.RemoveRigAsync(draft.Id, Stop);
        Assert.Equal(
            [
                new(GardenEvent.List, draft.Id, 1),
                new(GardenEvent.Draft, draft.Id, 2),
                new GardenChange(GardenEvent.Draft, draft.Id, 3),
            ],
            heard
        );
    }

    private static Draft Kept(DraftOutcome outcome) => Assert.IsType<DraftOutcome.Kept>(outcome).Draft;
}
