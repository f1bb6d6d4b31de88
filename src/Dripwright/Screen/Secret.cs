using System.Text;
using Dripwright.Language;
using Dripwright.Terminal;

namespace Dripwright.Screen;

/// <summary>Asks for a passphrase.</summary>
internal static class Secret
{
    /// <summary>Twice and unseen at a terminal, else the first line of the standard input; null where the two differ.</summary>
    public static string? Ask(Surroundings around, CancellationToken stop)
    {
        if (!around.InIsTerminal)
        {
            return around.In.ReadLine() ?? "";
        }

        var first = One(around, Words.Of("program.people.ask"), stop);
        return first == One(around, Words.Of("program.people.ask.again"), stop) ? first : null;
    }

    /// <summary>A line of the console that is not shown.</summary>
    public static string? Unseen()
    {
        var typed = new StringBuilder();
        while (true)
        {
            var key = Console.ReadKey(intercept: true);
            switch (key.Key)
            {
                case ConsoleKey.Enter:
                    return typed.ToString();
                case ConsoleKey.Backspace:
                    typed.Length = Math.Max(0, typed.Length - 1);
                    break;
                default:
                    if (!char.IsControl(key.KeyChar))
                    {
                        typed.Append(key.KeyChar);
                    }

                    break;
            }
        }
    }

    private static string One(Surroundings around, string question, CancellationToken stop)
    {
        around.Error.Write(question + " ");
        around.Error.Flush();
        var line = Interruptible.Wait(around.ReadUnseen ?? around.In.ReadLine, stop) ?? "";
        around.Error.WriteLine();
        return line;
    }
}
