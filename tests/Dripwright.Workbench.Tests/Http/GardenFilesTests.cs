using System.Net;
using System.Net.Http.Headers;
using Dripwright.Store.Tests;
using Dripwright.Workbench.Hosting;
using Dripwright.Workbench.Tests.Browser;

namespace Dripwright.Workbench.Tests.Http;

/// <summary>The whole garden over HTTP: files, backups, bin, disk.</summary>
public sealed class GardenFilesTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_bin_is_emptied_and_the_disk_told()
    {
        await using var caller = await Caller.Open();
        var (id, _) = await caller.Add("Bench");
        await caller.Add("Kept");
        await caller.Send(HttpMethod.Delete, $"rigs/{id}", (string?)null);
        var emptied = await caller.Send(HttpMethod.Delete, "bin", (string?)null);
        Assert.Equal(1, emptied.Json.GetProperty("deleted").GetInt32());
        Assert.Equal(0, (await caller.Get("bin")).Json.GetArrayLength());
        (await caller.Post($"bin/{id}/restore")).IsProblem(404);
        Assert.Equal(1, (await caller.Get("rigs")).Json.GetArrayLength());
        var disk = (await caller.Get("garden/disk")).Json;
        Assert.True(disk.GetProperty("garden").GetInt64() > 10_000);
        Assert.True(disk.GetProperty("free").GetInt64() > 0);
    }

    [Fact]
    public async Task A_backup_is_made_told_fetched_and_restored()
    {
        await using var caller = await Caller.Open();
        Assert.True((await caller.Get("garden/backups")).Json.GetProperty("isOld").GetBoolean());
        var made = await caller.Post("garden/backups");
        Assert.Equal(200, made.Status);
        var name = made.Json.GetProperty("name").GetString();
        var told = (await caller.Get("garden/backups")).Json;
        Assert.False(told.GetProperty("isOld").GetBoolean());
        Assert.Equal(name, told.GetProperty("backups")[0].GetProperty("name").GetString());
        var (id, _) = await caller.Add("Later");
        var file = await caller.Get($"garden/backups/{name}");
        using var back = new ByteArrayContent(file.Bytes);
        Assert.Equal(
            204,
            (await caller.Send(HttpMethod.Post, "garden/restore", back, null, "application/octet-stream")).Status
        );
        (await caller.Get($"rigs/{id}")).IsProblem(404);
        (await caller.Get("garden/backups/backups.json")).IsProblem(404);
        (await caller.Get("garden/backups/..%2f..%2fetc%2fpasswd")).IsProblem(404);
        Assert.True((await caller.Get("garden/disk")).Json.GetProperty("backups").GetInt64() >= file.Bytes.Length);
    }

    [Fact]
    public async Task A_backup_is_made_each_day_while_the_workbench_is_open()
    {
        var clock = new SteppedClock(new DateTime(2026, 4, 1, 3, 0, 0));
        await using var bench = await Bench.Open(withDemo: false, time: clock);
        var folder = Path.Combine(bench.Folder, "garden-backups");
        await Made(DailyBackups.First, 1);
        await Made(TimeSpan.FromDays(1), 2);

        async Task Made(TimeSpan step, int count)
        {
            for (var n = 0; n < 300 && Files() < count; n++)
            {
                // The service may just be setting its clock.
                clock.Step(n % 20 == 0 ? step : TimeSpan.Zero);
                await Task.Delay(50, Stop);
            }

            Assert.InRange(Files(), count, count + 2);
        }

        int Files() => Directory.Exists(folder) ? Directory.GetFiles(folder, "garden-*.dripwright").Length : 0;
    }

    [Fact]
    public async Task One_slow_upload_keeps_nobody_elses_waiting_and_a_broken_one_leaves_nothing()
    {
        await using var caller = await Caller.Open();
        await caller.Add("Bench");
        var file = await caller.Get("garden/export");
        var gate = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        using var broken = CancellationTokenSource.CreateLinkedTokenSource(Stop);
        using var slow = new SlowContent(file.Bytes, gate.Task);
        slow.Headers.ContentType = MediaTypeHeaderValue.Parse("application/json");
        var coming = caller.Client.PostAsync($"{Caller.Api}/garden/import", slow, broken.Token);
        await slow.HasBegun.Task.WaitAsync(Stop);

        var other = await caller.Post("garden/import", file.Text);
        Assert.Equal(200, other.Status);
        Assert.NotEmpty(Directory.GetDirectories(caller.Bench.Folder, ".upload.passing-*"));

        await broken.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => coming);
        gate.SetResult();
        for (var n = 0; n < 200 && Directory.GetDirectories(caller.Bench.Folder, ".upload.*").Length > 0; n++)
        {
            await Task.Delay(50, Stop);
        }

        Assert.Empty(Directory.GetDirectories(caller.Bench.Folder, ".upload.*"));
    }

    [Fact]
    public async Task What_a_killed_workbench_left_of_an_upload_is_cleared_at_the_next_start()
    {
        var bench = await Bench.Open(withDemo: false);
        var folder = await bench.Stop();
        var left = Directory.CreateDirectory(Path.Combine(folder, $".upload.passing-{Guid.NewGuid():N}")).FullName;
        await File.WriteAllTextAsync(Path.Combine(left, "lock"), "", Stop);
        await File.WriteAllTextAsync(Path.Combine(left, "garden"), "half of it", Stop);
        await using var again = await Bench.Open(folder, withDemo: false);
        Assert.False(Directory.Exists(left));
    }

    /// <summary>An upload whose second half waits.</summary>
    private sealed class SlowContent(byte[] bytes, Task gate) : HttpContent
    {
        public TaskCompletionSource HasBegun { get; } = new(TaskCreationOptions.RunContinuationsAsynchronously);

        protected override Task SerializeToStreamAsync(Stream stream, TransportContext? context) =>
            SerializeToStreamAsync(stream, context, CancellationToken.None);

        protected override async Task SerializeToStreamAsync(
            Stream stream,
            TransportContext? context,
            CancellationToken cancellationToken
        )
        {
            await stream.WriteAsync(bytes.AsMemory(0, bytes.Length / 2), cancellationToken);
            await stream.FlushAsync(cancellationToken);
            HasBegun.TrySetResult();
            await gate.WaitAsync(cancellationToken);
            await stream.WriteAsync(bytes.AsMemory(bytes.Length / 2), cancellationToken);
        }

        protected override bool TryComputeLength(out long length)
        {
            length = bytes.Length;
            return true;
        }
    }
}
