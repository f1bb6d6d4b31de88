namespace Dripwright.Workbench.Household;

/// <summary>What somebody is in a garden. What each may do stands in <see cref="Access"/>.</summary>
public enum Role
{
    /// <summary>Looks: a parent on open day, a neighbour, a class that is shown something.</summary>
    Visitor,

    /// <summary>Works at the bench: reads what to do, counts parts, has setups suggested.</summary>
    Helper,

    /// <summary>Designs and runs: changes rigs, catalogue and settings.</summary>
    Grower,

    /// <summary>Answers for the garden: people, keys, and what cannot be taken back.</summary>
    Owner,
}

/// <summary>What somebody may do, in the steps in which it is given.</summary>
internal enum Right
{
    /// <summary>Needs no signing in: it shows nothing of the garden.</summary>
    Open,

    /// <summary>One's own account: passphrase, sessions, signing out.</summary>
    Self,

    /// <summary>Reads all that is computed and kept.</summary>
    Look,

    /// <summary>Counts parts on hand, has setups suggested and files of one's own planned.</summary>
    Help,

    /// <summary>Changes rigs, catalogue and settings; makes backups and takes the garden away as a file.</summary>
    Edit,

    /// <summary>People, keys, sign-ins, and what cannot be taken back: restoring and emptying the bin.</summary>
    Rule,
}
