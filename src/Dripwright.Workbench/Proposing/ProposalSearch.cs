using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Proposing;

namespace Dripwright.Workbench.Proposing;

/// <summary>One search for rigs in the background; one at a time, so that it does not slow everyone's typing down.</summary>
internal sealed class ProposalSearch : IDisposable
{
    /// <summary>A longer search is stopped, with the best so far kept.</summary>
    private static readonly TimeSpan s_longest = TimeSpan.FromMinutes(5);

    private static readonly SemaphoreSlim s_turn = new(1, 1);

    private readonly CancellationTokenSource _stop = new();
    private volatile ProposeProgress? _progress;

    /// <summary>How far it has come; null while it waits for its turn.</summary>
    public ProposeProgress? Progress => _progress;

    /// <summary>Asks to stop. What was found so far is the answer.</summary>
    public void Stop()
    {
        try
        {
            _stop.Cancel();
        }
        catch (ObjectDisposedException)
        {
            // It ended while the button was being pressed.
        }
    }

    /// <summary>Searches; null where it was stopped before its turn came.</summary>
    public async Task<ProposalList?> Run(Brief brief, PartsCatalogue catalogue)
    {
        try
        {
            await s_turn.WaitAsync(_stop.Token);
        }
        catch (OperationCanceledException)
        {
            return null;
        }

        try
        {
            _stop.CancelAfter(s_longest);
            var told = new Told(this);
            return await Task.Run(() => Proposer.Of(brief, catalogue, null, told, _stop.Token));
        }
        finally
        {
            s_turn.Release();
        }
    }

    public void Dispose()
    {
        Stop();
        _stop.Dispose();
    }

    private sealed class Told(ProposalSearch search) : IProgress<ProposeProgress>
    {
        public void Report(ProposeProgress value) => search._progress = value;
    }
}
