using System.CommandLine;

namespace Dripwright.Commands;

/// <summary>The rig file that a command reads or makes.</summary>
internal static class RigArgument
{
    /// <param name="description">What the help says of it.</param>
    /// <param name="name">What the help calls it.</param>
    public static Argument<string> Make(
        string description = "The rig file; \"-\" reads standard input.",
        string name = "rig file"
    )
    {
        var file = new Argument<string>("file") { Description = description, HelpName = name };
        // A misspelt option must not be taken for the name of a file.
        file.Validators.Add(result =>
        {
            if (result.Tokens is [{ Value: ['-', _, ..] word }])
            {
                result.AddError($"Unknown option '{word}'.");
            }
        });
        return file;
    }
}
