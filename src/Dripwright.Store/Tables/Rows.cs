namespace Dripwright.Store.Tables;

/// <summary>The garden itself: exactly one row.</summary>
internal sealed class GardenRow
{
    /// <summary>The one key there is.</summary>
    public const int TheOne = 1;

    public int Id { get; set; }

    public string Settings { get; set; } = "";

    public DateTime MadeAt { get; set; }

    /// <summary>How many changes the file has seen; 0 on a server.</summary>
    public long Edits { get; set; }
}

/// <summary>What a backup's content comes to: exactly one row in a backup, none in a garden.</summary>
internal sealed class ChecksumRow
{
    public const int TheOne = 1;

    public int Id { get; set; }

    public string Sha256 { get; set; } = "";

    public DateTime MadeAt { get; set; }
}

/// <summary>A document with its draft.</summary>
internal sealed class DocumentRow
{
    public int Id { get; set; }

    public string Kind { get; set; } = "";

    public string Name { get; set; } = "";

    public string Text { get; set; } = "";

    public int Version { get; set; }

    /// <summary>Number of the step that the draft stands at.</summary>
    public int Step { get; set; }

    public DateTime MadeAt { get; set; }

    public DateTime ChangedAt { get; set; }

    /// <summary>When it went into the bin; null where it is in use.</summary>
    public DateTime? RemovedAt { get; set; }

    /// <summary>Who changed it last; empty where nobody said who they are.</summary>
    public string ChangedBy { get; set; } = "";
}

/// <summary>A text that the draft once was. Steps form a tree: typing after an undo starts a new branch.</summary>
internal sealed class StepRow
{
    public int DocumentId { get; set; }

    public int Number { get; set; }

    /// <summary>The step that undo goes to; 0 for none. It may have been forgotten.</summary>
    public int Before { get; set; }

    /// <summary>The step that redo goes to; 0 for none.</summary>
    public int After { get; set; }

    public string Text { get; set; } = "";

    public string What { get; set; } = "";

    public DateTime At { get; set; }

    /// <summary>Who made it; empty where nobody said who they are.</summary>
    public string Who { get; set; } = "";
}

/// <summary>A saved revision.</summary>
internal sealed class RevisionRow
{
    public int DocumentId { get; set; }

    public int Number { get; set; }

    public DateTime At { get; set; }

    public string Who { get; set; } = "";

    public string Note { get; set; } = "";

    public string Text { get; set; } = "";
}
