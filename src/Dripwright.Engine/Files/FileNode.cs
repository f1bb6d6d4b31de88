namespace Dripwright.Engine.Files;

/// <summary>A value of a JSON file with the place where it stands.</summary>
/// <param name="Line">Line, counted from 1.</param>
/// <param name="Column">Character in the line, counted from 1.</param>
internal abstract record FileNode(int Line, int Column);

/// <summary>An object; its fields in the order of the file, those that stand twice among them.</summary>
internal sealed record FileObject(int Line, int Column, List<FileField> Fields) : FileNode(Line, Column)
{
    public FileField? this[string name] => Fields.Find(field => field.Name == name);
}

/// <summary>A field of an object, at the place of its name.</summary>
internal sealed record FileField(string Name, int Line, int Column, FileNode Value);

/// <summary>A list.</summary>
internal sealed record FileList(int Line, int Column, List<FileNode> Items) : FileNode(Line, Column);

/// <summary>Text.</summary>
internal sealed record FileText(int Line, int Column, string Text) : FileNode(Line, Column);

/// <summary>A number, as written.</summary>
internal sealed record FileNumber(int Line, int Column, string Text) : FileNode(Line, Column);

/// <summary>True, false (the value) or null.</summary>
internal sealed record FileWord(int Line, int Column, bool? Value) : FileNode(Line, Column);
