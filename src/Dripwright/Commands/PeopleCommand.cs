using System.CommandLine;
using System.Globalization;
using Dripwright.Language;
using Dripwright.Screen;
using Dripwright.Terminal;
using Dripwright.Workbench.Household;

namespace Dripwright.Commands;

/// <summary>
/// <c>people</c>: who may come into a workbench that asks, also while it is open. Passphrases are asked for or come by the standard input, never as
/// words of a call, which others on the machine can read.
/// </summary>
internal static class PeopleCommand
{
    private static readonly string[] s_roles = [.. Enum.GetNames<Role>().Select(name => name.ToLowerInvariant())];

    // Whom the log names: not a person of the garden but whoever may read its file.
    private static readonly Visitor s_here = new("", "dripwright people");

    public static Command Of(Surroundings around) =>
        new("people", Words.Of("program.people"))
        {
            List(around),
            Add(around),
            ChangeRole(around),
            Passphrase(around),
            Remove(around),
            Sessions(around),
            SignOut(around),
            PeopleKeyCommands.Keys(around),
            PeopleKeyCommands.Make(around),
            PeopleKeyCommands.End(around),
            Log(around),
        };

    /// <summary>An argument that names somebody.</summary>
    public static Argument<string> Person() =>
        new("person") { Description = Words.Of("program.people.person"), HelpName = Words.Of("program.name.name") };

    /// <summary>An option or argument's role.</summary>
    public static Role RoleOf(string word) => Enum.Parse<Role>(word, ignoreCase: true);

    /// <summary>The option that says a role.</summary>
    public static Option<string> RoleOption(Role usual) =>
        new Option<string>("--role")
        {
            Description = Words.Of("program.people.role.option"),
            HelpName = Words.Of("program.name.role"),
            DefaultValueFactory = _ => usual.ToString().ToLowerInvariant(),
        }.OneOf(s_roles);

    /// <summary>Works on the people of the data folder.</summary>
    public static async Task<int> In(Surroundings around, Func<People, Task> work)
    {
        var folder = CertificateCommands.DataFolder(around);
        Directory.CreateDirectory(folder);
        using var people = new People(folder, TimeProvider.System);
        await work(people).ConfigureAwait(false);
        return Exit.Good;
    }

    /// <inheritdoc cref="In(Surroundings, Func{People, Task})"/>
    public static Task<int> In(Surroundings around, Action<People> work) =>
        In(
            around,
            people =>
            {
                work(people);
                return Task.CompletedTask;
            }
        );

    private static string Passphrase(Surroundings around, CancellationToken stop) =>
        Secret.Ask(around, stop)
        ?? throw new Refusal(Exit.WrongCall, Wrong.Told(Words.Of("program.people.ask.unlike")));

    /// <summary>Somebody by name.</summary>
    public static Person Find(People people, string name) =>
        people.Find(name) ?? throw new Refusal(Exit.FaultyFile, Wrong.Told(Words.Of("program.people.nobody", name)));

    /// <summary>Tells what came of it.</summary>
    public static void Came(Surroundings around, string? why, string done)
    {
        if (why is not null)
        {
            throw new Refusal(Exit.FaultyFile, Wrong.Told(Words.Of($"people.said.{why}")));
        }

        around.Out.WriteLine(Plain.Line(done));
    }

    /// <summary>A time as lists show it.</summary>
    public static string When(DateTimeOffset at) =>
        at.UtcDateTime.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    /// <summary>Whom the log names.</summary>
    public static Visitor Here => s_here;

    private static Command List(Surroundings around)
    {
        var command = new Command("list", Words.Of("program.people.list"));
        command.SetAction(
            (_, _) =>
                In(
                    around,
                    people =>
                    {
                        foreach (var one in people.All)
                        {
                            around.Out.WriteLine(
                                Plain.Line(
                                    Words.Of(
                                        "program.people.line",
                                        one.Name,
                                        Words.Of($"role.{one.Role}"),
                                        one.Sessions.Count,
                                        one.Keys.Count
                                    )
                                )
                            );
                        }

                        if (people.IsEmpty)
                        {
                            around.Out.WriteLine(Words.Of("people.none"));
                        }
                    }
                )
        );
        return command;
    }

    private static Command Add(Surroundings around)
    {
        var person = Person();
        var role = RoleOption(Role.Helper);
        var command = new Command("add", Words.Of("program.people.add")) { person, role };
        command.SetAction(
            (call, stop) =>
                In(
                    around,
                    async people =>
                    {
                        var name = call.GetRequiredValue(person);
                        var wanted = RoleOf(call.GetRequiredValue(role));
                        var passphrase = Passphrase(around, stop);
                        Came(
                            around,
                            await people.Add(name, wanted, passphrase, Here, stop).ConfigureAwait(false),
                            Words.Of("program.people.added", name, Words.Of($"role.{wanted}"))
                        );
                    }
                )
        );
        return command;
    }

    private static Command ChangeRole(Surroundings around)
    {
        var person = Person();
        var role = new Argument<string>("role")
        {
            Description = Words.Of("program.people.role.option"),
            HelpName = Words.Of("program.name.role"),
        };
        role.OneOf(s_roles);
        var command = new Command("role", Words.Of("program.people.role")) { person, role };
        command.SetAction(
            (call, _) =>
                In(
                    around,
                    people =>
                    {
                        var one = Find(people, call.GetRequiredValue(person));
                        var wanted = RoleOf(call.GetRequiredValue(role));
                        Came(
                            around,
                            people.ChangeRole(one.Id, wanted, Here),
                            Words.Of("program.people.changed", one.Name, Words.Of($"role.{wanted}"))
                        );
                    }
                )
        );
        return command;
    }

    private static Command Passphrase(Surroundings around)
    {
        var person = Person();
        var command = new Command("passphrase", Words.Of("program.people.passphrase")) { person };
        command.SetAction(
            (call, stop) =>
                In(
                    around,
                    async people =>
                    {
                        var one = Find(people, call.GetRequiredValue(person));
                        var passphrase = Passphrase(around, stop);
                        Came(
                            around,
                            await people.SetPassphrase(one.Id, passphrase, Here, stop).ConfigureAwait(false),
                            Words.Of("program.people.set", one.Name)
                        );
                    }
                )
        );
        return command;
    }

    private static Command Remove(Surroundings around)
    {
        var person = Person();
        var command = new Command("remove", Words.Of("program.people.remove")) { person };
        command.SetAction(
            (call, _) =>
                In(
                    around,
                    people =>
                    {
                        var one = Find(people, call.GetRequiredValue(person));
                        Came(around, people.Remove(one.Id, Here), Words.Of("program.people.removed", one.Name));
                    }
                )
        );
        return command;
    }

    private static Command Sessions(Surroundings around)
    {
        var command = new Command("sessions", Words.Of("program.people.sessions"));
        command.SetAction(
            (_, _) =>
                In(
                    around,
                    people =>
                    {
                        foreach (
                            var (name, one) in people.All.SelectMany(who => who.Sessions.Select(s => (who.Name, s)))
                        )
                        {
                            around.Out.WriteLine(
                                Plain.Line(
                                    $"{one.Id}  {name}  {one.Device}  {one.From}  {When(one.At)}  {When(one.Seen)}"
                                )
                            );
                        }
                    }
                )
        );
        return command;
    }

    private static Command SignOut(Surroundings around)
    {
        var person = Person();
        person.Arity = ArgumentArity.ZeroOrOne;
        var session = new Option<string?>("--session")
        {
            Description = Words.Of("program.people.sign-out.session"),
            HelpName = Words.Of("program.name.number"),
        };
        var all = new Option<bool>("--all") { Description = Words.Of("program.people.sign-out.all") };
        var command = new Command("sign-out", Words.Of("program.people.sign-out")) { person, session, all };
        command.SetAction(
            (call, _) =>
                In(
                    around,
                    people =>
                    {
                        string? why = null;
                        if (call.GetValue(session) is { } id)
                        {
                            why = people.EndSession(id, Here);
                        }
                        else if (call.GetValue(person) is { } name)
                        {
                            people.EndSessions(Find(people, name).Id, Here);
                        }
                        else if (call.GetValue(all))
                        {
                            people.EndSessions(null, Here);
                        }
                        else
                        {
                            throw new Refusal(Exit.WrongCall, Wrong.Told(Words.Of("program.people.sign-out.whom")));
                        }

                        Came(around, why, Words.Of("people.done.ended"));
                    }
                )
        );
        return command;
    }

    private static Command Log(Surroundings around)
    {
        var command = new Command("log", Words.Of("program.people.log"));
        command.SetAction(
            (_, _) =>
                In(
                    around,
                    people =>
                    {
                        foreach (var line in people.Log.Newest(SignInLog.Lines))
                        {
                            around.Out.WriteLine(
                                Plain.Line(
                                    $"{When(line.At)}  {Words.Of($"people.signins.{line.What}")}  {line.Name}  {line.By}  {line.From}  {line.Device}  {line.Detail}"
                                )
                            );
                        }
                    }
                )
        );
        return command;
    }
}
