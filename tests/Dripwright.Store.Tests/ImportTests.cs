using System.Text.Json;
using Dripwright.Store.Ground;
using Dripwright.Store.Tests.Places;

namespace Dripwright.Store.Tests;

public sealed class ImportTests : IAsyncDisposable
{
    private const int Many = 30_000;

    private readonly SqlitePlaces _places = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public ValueTask DisposeAsync() => _places.DisposeAsync();

    [Fact]
    public void Names_are_found_in_one_pass_however_many_are_equal()
    {
        var names = new FreeNames([("rig", "Bench"), ("rig", "Bench (3)")]);
        HashSet<string> given = [];
        for (var n = 0; n < Many; n++)
        {
            Assert.True(given.Add(names.Take("rig", "Bench")));
        }

        Assert.InRange(names.Looks, Many, (2 * Many) + 10);
        Assert.DoesNotContain("Bench (3)", given);
        Assert.Equal("Bench", names.Take("log", "Bench"));
    }

    [Fact]
    public void Long_names_that_begin_alike_are_found_in_one_pass_as_well_and_stay_short_enough()
    {
        var names = new FreeNames([]);
        HashSet<string> given = [];
        for (var n = 0; n < 5000; n++)
        {
            var name = new string('n', 190) + n.ToString("D10", System.Globalization.CultureInfo.InvariantCulture);
            Assert.True(given.Add(names.Take("rig", name)));
            Assert.True(given.Add(names.Take("rig", name)));
        }

        Assert.All(given, name => Assert.InRange(name.Length, 1, Limits.NameLetters));
        Assert.InRange(names.Looks, 10_000, 20_000);
    }

    [Fact]
    public async Task Thirty_thousand_equal_names_are_imported_with_few_statements_for_each()
    {
        var place = _places.New();
        await using var garden = await Garden.OpenAsync(place, stop: Stop);
        var rig = await garden.AddRigAsync("Bench", "{}", Stop);
        using var file = new MemoryStream(Equal(Many));
        var imported = await garden.ImportAsync(file, "yard.json", Stop);
        Assert.Equal(Many, imported.Rigs);
        Assert.Equal(Many + 1, (await garden.RigsAsync(Stop)).Select(entry => entry.Name).Distinct().Count());
        Assert.IsType<DraftOutcome.Kept>(await garden.KeepDraftAsync(rig.Id, "{ }", 1, "", Stop));
    }

    [Fact]
    public async Task While_a_garden_file_is_made_ready_others_write()
    {
        var place = _places.New();
        await using var garden = await Garden.OpenAsync(place, stop: Stop);
        var rig = await garden.AddRigAsync("Bench", "{}", Stop);
        using var slow = new Slow(Equal(100));
        var importing = garden.ImportAsync(slow, "yard.json", Stop);
        await slow.HasBegun.Task.WaitAsync(Stop);
        Assert.IsType<DraftOutcome.Kept>(await garden.KeepDraftAsync(rig.Id, "{ }", 1, "", Stop));
        Assert.False(importing.IsCompleted);
        slow.GoOn.SetResult();
        Assert.Equal(100, (await importing).Rigs);
    }

    private static byte[] Equal(int count) =>
        JsonSerializer.SerializeToUtf8Bytes(
            new
            {
                gardenFormat = 1,
                settings = new { },
                documents = Enumerable.Repeat(
                    new
                    {
                        kind = "rig",
                        name = "Bench",
                        draft = "{}",
                    },
                    count
                ),
            }
        );

    /// <summary>An upload that stops after its first half until it is told to go on.</summary>
    private sealed class Slow(byte[] bytes) : MemoryStream(bytes)
    {
        public TaskCompletionSource HasBegun { get; } = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public TaskCompletionSource GoOn { get; } = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public override async ValueTask<int> ReadAsync(
            Memory<byte> buffer,
            CancellationToken cancellationToken = default
        )
        {
            if (Position > Length / 2)
            {
                HasBegun.TrySetResult();
                await GoOn.Task.WaitAsync(cancellationToken);
            }

            var most = (int)Math.Min(buffer.Length, (Length / 2) + 1);
            return await base.ReadAsync(buffer[..most], cancellationToken);
        }
    }
}
