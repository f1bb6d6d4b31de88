using System.CommandLine;
using Dripwright.Language;
using Dripwright.Screen;
using Dripwright.Terminal;
using Dripwright.Workbench.Household;

namespace Dripwright.Commands;

/// <summary><c>people keys</c>, <c>key</c> and <c>end-key</c>: keys for programs that call the HTTP interface.</summary>
internal static class PeopleKeyCommands
{
    public static Command Keys(Surroundings around)
    {
        var command = new Command("keys", Words.Of("program.people.keys"));
        command.SetAction(
            (_, _) =>
                PeopleCommand.In(
                    around,
                    people =>
                    {
                        foreach (
                            var (who, key) in people.All.SelectMany(who => who.Keys.Select(key => (who.Name, key)))
                        )
                        {
                            around.Out.WriteLine(
                                Plain.Line(
                                    $"{key.Id}  {key.Label}  {Words.Of($"role.{key.Role}")}  {who}  {PeopleCommand.When(key.EndsAt)}"
                                )
                            );
                        }
                    }
                )
        );
        return command;
    }

    public static Command Make(Surroundings around)
    {
        var person = PeopleCommand.Person();
        var label = new Argument<string>("label")
        {
            Description = Words.Of("people.keys.label"),
            HelpName = Words.Of("program.name.name"),
        };
        var role = PeopleCommand.RoleOption(Role.Visitor);
        var days = new Option<int>("--days")
        {
            Description = Words.Of("program.people.key.days"),
            HelpName = Words.Of("program.name.number"),
            DefaultValueFactory = _ => 90,
        };
        var command = new Command("key", Words.Of("program.people.key")) { person, label, role, days };
        command.SetAction(
            (call, _) =>
                PeopleCommand.In(
                    around,
                    people =>
                    {
                        var who = PeopleCommand.Find(people, call.GetRequiredValue(person));
                        var (key, why) = people.MakeKey(
                            who.Id,
                            call.GetRequiredValue(label),
                            PeopleCommand.RoleOf(call.GetRequiredValue(role)),
                            call.GetRequiredValue(days),
                            PeopleCommand.Here
                        );
                        PeopleCommand.Came(around, why, key ?? "");
                    }
                )
        );
        return command;
    }

    public static Command End(Surroundings around)
    {
        var id = new Argument<string>("key")
        {
            Description = Words.Of("program.people.end-key.number"),
            HelpName = Words.Of("program.name.number"),
        };
        var command = new Command("end-key", Words.Of("program.people.end-key")) { id };
        command.SetAction(
            (call, _) =>
                PeopleCommand.In(
                    around,
                    people =>
                    {
                        PeopleCommand.Came(
                            around,
                            people.EndKey(call.GetRequiredValue(id), PeopleCommand.Here),
                            Words.Of("people.done.key-ended")
                        );
                    }
                )
        );
        return command;
    }
}
