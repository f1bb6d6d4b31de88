using System.Text;
using CsCheck;

namespace Dripwright.Engine.Tests.Files;

/// <summary>Texts of JSON's own marks thrown together, with words that a kind of file knows among them.</summary>
internal static class JsonMarks
{
    private static readonly string[] s_marks =
    [
        "{",
        "}",
        "[",
        "]",
        ":",
        ",",
        "\"",
        "1",
        "-",
        "-1e999",
        "null",
        "true",
        "\\",
        "\n",
        "//",
        "/*",
        "é",
        " ",
    ];

    /// <summary>Bytes of up to forty marks and words.</summary>
    /// <param name="words">Words of the kind of file, put in quotes here.</param>
    public static Gen<byte[]> With(params string[] words) =>
        Gen.OneOf<string>([.. s_marks, .. words.Select(word => $"\"{word}\"")])
            .Array[0, 40]
            .Select(marks => Encoding.UTF8.GetBytes(string.Concat(marks)));
}
