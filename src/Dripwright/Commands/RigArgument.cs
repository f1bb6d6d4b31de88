using System.CommandLine;
using Dripwright.Language;

namespace Dripwright.Commands;

/// <summary>The rig file that a command reads or makes.</summary>
internal static class RigArgument
{
    /// <param name="description">What the help says of it; null for a rig file that is read.</param>
    /// <param name="name">What the help calls it.</param>
    public static Argument<string> Make(string? description = null, string? name = null)
    {
        var file = new Argument<string>("file")
        {
            Description = description ?? Words.Of("program.rig-file"),
            HelpName = name ?? Words.Of("program.name.rig-file"),
        };
        // A misspelt option must not be taken for the name of a file.
        file.Validators.Add(result =>
        {
            if (result.Tokens is [{ Value: ['-', _, ..] word }])
            {
                result.Refuse(Wrong.UnknownOption(word));
            }
        });
        return file;
    }
}
