using System.CommandLine;
using Dripwright.Engine.Catalogue;
using Dripwright.Language;
using Dripwright.Screen;
using Dripwright.Terminal;

namespace Dripwright.Commands;

/// <summary><c>catalogue</c>: what a rig file can name.</summary>
internal static class CatalogueCommand
{
    public static Command Of(Surroundings around, SharedOptions shared)
    {
        var kind = new Argument<string?>("kind")
        {
            Description = Words.Of("program.catalogue.kind", string.Join(", ", CatalogueJson.Kinds)),
            HelpName = Words.Of("program.name.kind"),
            Arity = ArgumentArity.ZeroOrOne,
        };
        kind.OneOf(CatalogueJson.Kinds);
        var json = new Option<bool>("--json") { Description = Words.Of("program.json") };
        var command = new Command("catalogue", Words.Of("program.catalogue")) { kind, json };
        command.SetAction(
            (call, stop) =>
            {
                var all = CatalogueListing.Of(shared.ReadCatalogue(call, around, stop));
                var named = CatalogueJson
                    .Kinds.Zip(all)
                    .Where(pair => call.GetValue(kind) is not { } wanted || pair.First == wanted);
                if (call.GetValue(json))
                {
                    around.Out.Write(CatalogueJson.Write(named));
                }
                else
                {
                    Consoles.Draw(
                        around,
                        shared.ShowsColour(call, around),
                        console => CatalogueView.Draw(console, [.. named.Select(pair => pair.Second)])
                    );
                }

                return Task.FromResult(Exit.Good);
            }
        );
        return command;
    }
}
