using Dripwright.Workbench.Failing;
using Dripwright.Workbench.Work;

namespace Dripwright.Workbench.Tests.Work;

public sealed class WorkHostTests
{
    private static readonly TimeSpan s_long = TimeSpan.FromMinutes(2);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Who_comes_when_too_many_wait_is_told_when_to_come_again()
    {
        using var host = Host(new WorkLane("one", 1, 1, s_long));
        using var gate = new ManualResetEventSlim();
        var first = Wait(host, "ours", gate);
        var second = host.Run(host.Limits.Requests, "ours", _ => 2, Stop);

        var third = await Assert.ThrowsAsync<LineFull>(() => host.Run(host.Limits.Requests, "ours", _ => 3, Stop));

        Assert.Equal(host.Limits.RetryAfter, third.RetryAfter);
        gate.Set();
        Assert.Equal(3, await first + await second);
        // What was given back can be taken again.
        Assert.Equal(4, await host.Run(host.Limits.Requests, "ours", _ => 4, Stop));
    }

    [Fact]
    public async Task Work_that_takes_too_long_is_given_up()
    {
        using var host = Host(new WorkLane("short", 1, 1, TimeSpan.FromMilliseconds(50)));
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() =>
            host.Run(
                host.Limits.Requests,
                "ours",
                token =>
                {
                    token.WaitHandle.WaitOne();
                    token.ThrowIfCancellationRequested();
                    return 1;
                },
                Stop
            )
        );
    }

    [Fact]
    public async Task The_turn_of_work_that_nobody_waits_for_is_given_back_only_when_it_has_ended()
    {
        using var host = Host(new WorkLane("one", 1, 1, s_long));
        using var gate = new ManualResetEventSlim();
        using var impatient = new CancellationTokenSource();
        var begun = new TaskCompletionSource();
        var left = host.Run(
            host.Limits.Requests,
            "ours",
            _ =>
            {
                begun.SetResult();
                gate.Wait(Stop);
                return 1;
            },
            impatient.Token
        );
        await begun.Task.WaitAsync(Stop);
        await impatient.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => left);

        var next = host.Run(host.Limits.Requests, "ours", _ => 2, Stop);
        await Task.Delay(50, Stop);
        Assert.False(next.IsCompleted);
        gate.Set();
        Assert.Equal(2, await next);
    }

    [Fact]
    public async Task A_garden_with_a_long_line_does_not_push_another_back_and_its_full_line_is_its_own()
    {
        using var host = Host(new WorkLane("one", 1, 3, s_long));
        using var gate = new ManualResetEventSlim();
        var order = new System.Collections.Concurrent.ConcurrentQueue<string>();
        var first = Wait(host, "greedy", gate);
        List<Task<int>> all = [first];
        for (var i = 0; i < 3; i++)
        {
            all.Add(Told("greedy"));
        }

        await Assert.ThrowsAsync<LineFull>(() => Told("greedy"));
        all.Add(Told("modest"));
        gate.Set();
        await Task.WhenAll(all);

        // The head of each line stands in the common one: the other garden comes before the long line has ended.
        Assert.Equal("modest", order.First());
        Assert.Equal(4, order.Count);

        Task<int> Told(string garden) =>
            host.Run(
                host.Limits.Requests,
                garden,
                _ =>
                {
                    order.Enqueue(garden);
                    return 0;
                },
                Stop
            );
    }

    [Fact]
    public async Task A_page_waits_where_a_request_would_be_refused()
    {
        var narrow = new WorkLane("pages", 1, 0, s_long);
        using var host = new WorkHost(new() { Pages = narrow, RetryAfter = TimeSpan.FromMilliseconds(20) });
        using var gate = new ManualResetEventSlim();
        var page = Works.Of(host);
        var first = page.Run(
            _ =>
            {
                gate.Wait(Stop);
                return 1;
            },
            Stop
        );
        var second = page.Run(_ => 2, Stop);
        await Task.Delay(100, Stop);
        Assert.False(second.IsCompleted);
        gate.Set();
        Assert.Equal(3, await first + await second);
    }

    private static WorkHost Host(WorkLane lane) => new(new() { Requests = lane });

    private static Task<int> Wait(WorkHost host, string garden, ManualResetEventSlim gate) =>
        host.Run(
            host.Limits.Requests,
            garden,
            _ =>
            {
                gate.Wait(Stop);
                return 1;
            },
            Stop
        );
}
