using Dripwright.Engine;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Rigs;

namespace Dripwright.Workbench.Work;

/// <summary>The last plans made: who fetches the sheets or the plots of a rig one by one has it planned once.</summary>
/// <remarks>The same text, catalogue and parts on hand give the same plan, so a kept one never says anything else. No garden is given
/// what was kept for another one.</remarks>
internal sealed class KeptPlans
{
    /// <summary>Plans grow with their pots: a few of small rigs, or one of a large one.</summary>
    private const int MostPots = 1000;

    private const int Most = 16;

    private readonly Lock _turn = new();
    private readonly LinkedList<Entry> _newest = [];

    /// <summary>The plan of this text of a garden; null where it is not kept.</summary>
    public Plan? Find(string garden, RigSource file, PartsCatalogue catalogue, bool withDraws)
    {
        lock (_turn)
        {
            for (var at = _newest.First; at is not null; at = at.Next)
            {
                if (at.Value.Is(garden, file, catalogue, withDraws))
                {
                    _newest.Remove(at);
                    _newest.AddFirst(at);
                    return at.Value.Plan;
                }
            }
        }

        return null;
    }

    /// <summary>Keeps a plan as the newest, and lets go of the oldest.</summary>
    public void Keep(string garden, RigSource file, PartsCatalogue catalogue, bool withDraws, Plan plan)
    {
        lock (_turn)
        {
            _newest.AddFirst(new Entry(garden, file, catalogue, withDraws, plan));
            while (_newest.Count > 1 && (_newest.Count > Most || _newest.Sum(kept => kept.Pots) > MostPots))
            {
                _newest.RemoveLast();
            }
        }
    }

    private sealed record Entry(string Garden, RigSource File, PartsCatalogue Catalogue, bool WithDraws, Plan Plan)
    {
        public int Pots { get; } = Plan.Layout.Rows.Sum(row => row.Pots.Count);

        public bool Is(string garden, RigSource file, PartsCatalogue catalogue, bool withDraws) =>
            Garden == garden
            && WithDraws == withDraws
            && ReferenceEquals(Catalogue, catalogue)
            && File.Name == file.Name
            && File.Text == file.Text
            && OnHand(File).SequenceEqual(OnHand(file));

        private static IReadOnlyList<OnHand> OnHand(RigSource file) => file.OnHand ?? [];
    }
}
