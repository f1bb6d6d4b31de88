using CsCheck;
using Dripwright.Store.Ground;
using Dripwright.Store.Tests.Places;

namespace Dripwright.Store.Tests;

public sealed class HistoryLawsInAFile() : HistoryLawTests(new SqlitePlaces());

public sealed class HistoryLawsOnAServer() : HistoryLawTests(new PostgresPlaces());

/// <summary>Laws of undo and redo over drawn sequences of edits, beside a model that is a list and a place in it.</summary>
public abstract class HistoryLawTests(ITestPlaces places) : IAsyncDisposable
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask DisposeAsync()
    {
        await places.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    [Fact]
    public async Task Undo_then_redo_gives_the_same_text_and_no_kept_draft_is_ever_lost()
    {
        await using var garden = await Garden.OpenAsync(places.New(), stop: Stop);
        // 0 undoes, 1 redoes, 2 to 4 type.
        var sequences = Gen.Int[0, 4].Array[1, 18];
        await sequences.HoldsAsync(
            async acts =>
            {
                var draft = await garden.AddRigAsync("drawn", "start", Stop);
                List<string> line = ["start"];
                HashSet<string> kept = ["start"];
                var at = 0;
                for (var n = 0; n < acts.Length; n++)
                {
                    var before = draft;
                    if (acts[n] == 0)
                    {
                        draft = Kept(await garden.UndoAsync(draft.Id, draft.Version, Stop));
                        at = Math.Max(0, at - 1);
                        if (before.CanUndo)
                        {
                            var again = Kept(await garden.RedoAsync(draft.Id, draft.Version, Stop));
                            Assert.Equal(before.Text, again.Text);
                            draft = Kept(await garden.UndoAsync(draft.Id, again.Version, Stop));
                        }
                    }
                    else if (acts[n] == 1)
                    {
                        draft = Kept(await garden.RedoAsync(draft.Id, draft.Version, Stop));
                        at = Math.Min(line.Count - 1, at + 1);
                    }
                    else
                    {
                        var text = "text " + n.ToString(System.Globalization.CultureInfo.InvariantCulture);
                        draft = Kept(await garden.KeepDraftAsync(draft.Id, text, draft.Version, "", Stop));
                        line.RemoveRange(at + 1, line.Count - at - 1);
                        line.Add(text);
                        kept.Add(text);
                        at++;
                    }

                    Assert.Equal(line[at], draft.Text);
                    Assert.Equal(at > 0, draft.CanUndo);
                    Assert.Equal(at < line.Count - 1, draft.CanRedo);
                }

                // Also what was typed on a branch that redo no longer reaches.
                var steps = await garden.StepsAsync(draft.Id, Stop);
                Assert.Equal(kept, [.. steps.Select(step => step.Text)]);
                foreach (var step in steps)
                {
                    draft = Kept(await garden.GoToStepAsync(draft.Id, step.Number, draft.Version, Stop));
                    Assert.Equal(step.Text, draft.Text);
                }
            },
            iter: 12
        );
    }

    private static Draft Kept(DraftOutcome outcome) => Assert.IsType<DraftOutcome.Kept>(outcome).Draft;
}
