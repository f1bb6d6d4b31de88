using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Proposing;
using Dripwright.Workbench.Work;

namespace Dripwright.Workbench.Proposing;

/// <summary>One search for rigs in the background, from a page.</summary>
internal sealed class ProposalSearch : IDisposable
{
    /// <summary>A longer search is stopped, with the best so far kept.</summary>
    private static readonly TimeSpan s_longest = TimeSpan.FromMinutes(5);

    private readonly CancellationTokenSource _stop = new();
    private readonly CancellationTokenSource _leave = new();
    private volatile ProposeProgress? _progress;
    private int _hasBegun;

    /// <summary>How far it has come; null while it waits for its turn.</summary>
    public ProposeProgress? Progress => _progress;

    /// <summary>Asks to stop. What was found so far is the answer.</summary>
    public void Stop()
    {
        try
        {
            _stop.Cancel();
            // What has begun ends by itself, with an answer; what still waits leaves the line.
            if (Interlocked.Exchange(ref _hasBegun, 1) == 0)
            {
                _leave.Cancel();
            }
        }
        catch (ObjectDisposedException)
        {
            // It ended while the button was being pressed.
        }
    }

    /// <summary>Searches; null where it was stopped before its turn came.</summary>
    public async Task<ProposalList?> Run(PageWork work, Brief brief, PartsCatalogue catalogue)
    {
        try
        {
            return await work.Search(
                _ =>
                {
                    if (Interlocked.Exchange(ref _hasBegun, 1) != 0)
                    {
                        return null;
                    }

                    _stop.CancelAfter(s_longest);
                    return Proposer.Of(brief, catalogue, null, new Told(this), _stop.Token);
                },
                _leave.Token
            );
        }
        catch (OperationCanceledException)
        {
            return null;
        }
    }

    public void Dispose()
    {
        Stop();
        _stop.Dispose();
        _leave.Dispose();
    }

    private sealed class Told(ProposalSearch search) : IProgress<ProposeProgress>
    {
        public void Report(ProposeProgress value) => search._progress = value;
    }
}
