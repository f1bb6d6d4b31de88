using Dripwright.Store;
using Dripwright.Store.Ground;
using Dripwright.Workbench.Editing;

namespace Dripwright.Workbench.Tests.Editing;

/// <summary>What is typed is never lost, and never called kept before it is.</summary>
public sealed class DraftKeepingTests : IAsyncLifetime
{
    private const string Ten = """{ "rows": [{ "pots": 10 }] }""";
    private const string Eleven = """{ "rows": [{ "pots": 11 }] }""";
    private const string Twelve = """{ "rows": [{ "pots": 12 }] }""";

    private readonly string _folder = Directory.CreateTempSubdirectory("dripwright-keeping-").FullName;
    private Garden _garden = null!;
    private Draft _draft = null!;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        _garden = await Garden.OpenAsync(GardenPlace.File(Path.Combine(_folder, "g.dripwright")), stop: Stop);
        _draft = await _garden.AddRigAsync("Ten", Ten, Stop);
    }

    public async ValueTask DisposeAsync()
    {
        await _garden.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public async Task What_is_typed_is_unkept_at_once_and_kept_when_the_typing_rests()
    {
        await using var page = Page(TimeSpan.FromMilliseconds(20));
        var told = new List<bool>();
        var isKept = new TaskCompletionSource();
        page.Changed += (_, _) =>
        {
            told.Add(page.IsUnkept);
            if (!page.IsUnkept)
            {
                isKept.TrySetResult();
            }
        };

        Assert.True(await page.Write(Eleven, "pots"));
        Assert.True(page.IsUnkept);
        await isKept.Task.WaitAsync(Stop);

        Assert.True(told[0]);
        Assert.Equal(Eleven, (await _garden.DraftAsync(_draft.Id, Stop))!.Text);
        Assert.False(await page.Write(Eleven, "pots"));
    }

    [Fact]
    public async Task Two_fields_are_two_steps_and_closing_the_page_keeps_what_was_typed_last()
    {
        var page = Page(TimeSpan.FromHours(1));
        await page.Write(Eleven, "pots");
        await page.Write(Twelve, "spacing");
        Assert.Equal(Eleven, (await _garden.DraftAsync(_draft.Id, Stop))!.Text);
        await page.DisposeAsync();
        Assert.Equal(Twelve, (await _garden.DraftAsync(_draft.Id, Stop))!.Text);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task In_a_conflict_either_text_can_be_taken_and_the_other_is_one_step_back(bool mine)
    {
        await using var page = Page(TimeSpan.FromHours(1));
        await page.Write(Eleven, "pots");
        await _garden.KeepDraftAsync(_draft.Id, Twelve, _draft.Version, "elsewhere", Stop);
        await page.Heard();
        Assert.Equal(Twelve, page.Other!.Text);
        // Nothing is overwritten while nobody has chosen.
        await page.Keep();
        Assert.Equal(Twelve, (await _garden.DraftAsync(_draft.Id, Stop))!.Text);

        if (mine)
        {
            await page.TakeMine();
        }
        else
        {
            Assert.True(await page.TakeOther());
        }

        Assert.Null(page.Other);
        Assert.Equal(mine ? Eleven : Twelve, page.Text);
        Assert.Equal(page.Text, (await _garden.DraftAsync(_draft.Id, Stop))!.Text);
        Assert.True(await page.Step(_garden.UndoAsync));
        Assert.Equal(mine ? Twelve : Eleven, page.Text);
    }

    [Fact]
    public async Task What_cannot_be_kept_stays_with_the_reason_and_is_kept_with_the_next_try()
    {
        await using var page = Page(TimeSpan.FromHours(1));
        var large = new string(' ', Limits.TextBytes) + Ten;
        await page.Write(large, "file");
        await page.Keep();
        Assert.NotNull(page.Refused);
        Assert.True(page.IsUnkept);
        Assert.Equal(large, page.Text);
        await page.Write(Eleven, "file");
        Assert.True(await page.Keep());
        Assert.Null(page.Refused);
        Assert.False(page.IsUnkept);
    }

    [Fact]
    public async Task A_rig_thrown_away_elsewhere_is_gone()
    {
        await using var page = Page(TimeSpan.FromHours(1));
        await _garden.RemoveRigAsync(_draft.Id, Stop);
        await page.Heard();
        Assert.True(page.IsGone);
    }

    private DraftKeeping Page(TimeSpan keepAfter) => new(_garden, _draft, keepAfter, _ => "0");
}
