using System.Globalization;
using Dripwright.Language;
using Dripwright.Screen;
using Dripwright.Terminal;

namespace Dripwright.Commands;

/// <summary>Asks a person at a terminal. An empty line takes the answer shown; the end of input takes all that are left.</summary>
internal sealed class Questions(Surroundings around, CancellationToken stop)
{
    private bool _over;

    public string Text(string question, string usual) => Checked(question, usual, _ => null);

    public string OneOf(string question, string usual, params string[] allowed) =>
        Checked(
            question,
            usual,
            word => allowed.Contains(word) ? null : Words.Of("program.ask.one-of", string.Join(", ", allowed))
        );

    public bool Yes(string question) => OneOf(Words.Of("program.ask.yes-no", question), "no", "yes", "no") == "yes";

    public int Number(string question, int usual, int most)
    {
        var text = most.ToString(CultureInfo.InvariantCulture);
        var answer = Checked(
            question,
            usual.ToString(CultureInfo.InvariantCulture),
            word => StarterOptions.IsCount(word, most) ? null : Words.Of("program.ask.whole", text)
        );
        return int.Parse(answer, CultureInfo.InvariantCulture);
    }

    /// <summary>Asks until the answer has no fault.</summary>
    /// <param name="question">The question.</param>
    /// <param name="usual">Taken for an empty line.</param>
    /// <param name="fault">What would be right; null where the answer is.</param>
    public string Checked(string question, string usual, Func<string, string?> fault)
    {
        while (!_over)
        {
            around.Error.Write($"{question} [{usual}] ");
            around.Error.Flush();
            var line = Interruptible.Wait(around.In.ReadLine, stop);
            if (line is null)
            {
                _over = true;
                around.Error.WriteLine();
                break;
            }

            var answer = line.Trim();
            if (answer.Length == 0)
            {
                return usual;
            }

            if (fault(answer) is not { } expected)
            {
                return answer;
            }

            around.Error.WriteLine(Plain.Line("  " + Words.Of("program.ask.wrong", answer, expected)));
        }

        return usual;
    }
}
