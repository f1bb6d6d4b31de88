using Dripwright.Store;
using Dripwright.Store.Keeping;
using Dripwright.Workbench.Household;

namespace Dripwright.Workbench.Hosting;

/// <summary>The garden that a request or an open page is about. Each has one of these; nothing else knows a garden.</summary>
internal sealed class GardenOfRequest
{
    private ServedGarden? _chosen;
    private Garden? _inHand;

    /// <summary>What tells the garden from others of this server.</summary>
    public string Id => Chosen.Id;

    /// <summary>The garden, in the hand of who is asking.</summary>
    public Garden Garden => _inHand ?? Chosen.Garden;

    /// <summary>Who is asking. Where nobody is asked who they are everybody is this machine's own grower.</summary>
    public Actor Actor { get; private set; } = Actor.Anybody;

    /// <summary>Its daily backups.</summary>
    public BackupFolder Backups => Chosen.Backups;

    /// <summary>Who may come in.</summary>
    public People People => Chosen.People;

    private ServedGarden Chosen => _chosen ?? throw new InvalidOperationException("No garden has been chosen yet.");

    /// <summary>Says which garden it is.</summary>
    /// <param name="garden">The garden.</param>
    /// <exception cref="InvalidOperationException">It is another one already.</exception>
    public void Choose(ServedGarden garden)
    {
        if (_chosen is not null && !ReferenceEquals(_chosen, garden))
        {
            throw new InvalidOperationException("Another garden has been chosen already.");
        }

        _chosen = garden;
    }

    /// <summary>Says who is asking.</summary>
    /// <param name="actor">Who.</param>
    public void Act(Actor actor)
    {
        Actor = actor;
        _inHand = Chosen.Garden.As(actor.Hand());
    }
}
