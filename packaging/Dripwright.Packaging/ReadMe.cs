using System.Text;

namespace Dripwright.Packaging;

/// <summary>The page that lies beside the program: how to start it, what the system may say first, what this build cannot do.</summary>
internal static class ReadMe
{
    /// <summary>Its text for one platform.</summary>
    /// <param name="platform">Such as linux-x64.</param>
    /// <param name="lacking">What needs a native library that this platform's build does not have.</param>
    public static string Of(string platform, IReadOnlyList<Feature> lacking)
    {
        var text = new StringBuilder("Dripwright\n==========\n\n");
        text.Append(
            platform.StartsWith("win", StringComparison.Ordinal)
                ? """
                Open a terminal in this folder and type

                    .\dripwright open

                Windows may say "Windows protected your PC", for nobody has paid for a signature of this program. If its checksum is the
                published one: "More info", then "Run anyway". Windows may also ask whether the program may use the network; the workbench
                needs none unless you opened it with --network.

                """
            : platform.StartsWith("osx", StringComparison.Ordinal)
                ? """
                Open a terminal in this folder and type

                    ./dripwright open

                macOS stops a program that is downloaded and not signed: "cannot be opened because the developer cannot be verified". If its
                checksum is the published one, take that mark off the folder once:

                    xattr -dr com.apple.quarantine .

                On Apple's own processors a program must carry at least a signature without a name. If the system says "killed":

                    codesign --force --sign - dripwright *.dylib

                """
            : """
            Open a terminal in this folder and type

                ./dripwright open

            For a machine that is always on, dripwright.service beside this page starts it with the system; its first lines say how.

            """
        );
        text.Append(
            """

            It needs nothing else: no account, no network, no .NET. The browser opens by itself where there is one; the address is printed.
            "./dripwright --help" lists the other commands. Your garden is kept in your own data folder, not here: this folder can be
            replaced by a newer one.

            What others wrote in this program is listed, with its licence, in the folder "licences".

            """
        );
        if (lacking.Count > 0)
        {
            text.Append("\nWhat this build cannot do\n-------------------------\n");
            foreach (var one in lacking)
            {
                text.Append($"\n{char.ToUpperInvariant(one.Name[0])}{one.Name[1..]}: {one.Without}\n");
            }
        }

        return text.ToString().ReplaceLineEndings(platform.StartsWith("win", StringComparison.Ordinal) ? "\r\n" : "\n");
    }
}
