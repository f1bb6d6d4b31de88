namespace Dripwright.Engine.Files;

/// <summary>Keeps the groups of rows that a file lays over; see <see cref="RowAttribute"/>.</summary>
internal interface IRows
{
    /// <summary>The row of the group from which the new one takes what it does not say; null where it must say all.</summary>
    /// <param name="group">The list in which the new row stands.</param>
    /// <param name="path">Its path.</param>
    /// <param name="row">The new row.</param>
    object? Start(FieldDescription group, string path, FileObject row);

    /// <summary>Takes a row over, after the rows before it and before those behind it.</summary>
    /// <param name="group">The list in which it stands.</param>
    /// <param name="path">Its path.</param>
    /// <param name="row">The row as the file has it.</param>
    /// <param name="record">What it says; null where it is at fault.</param>
    void Add(FieldDescription group, string path, FileObject row, object? record);
}
