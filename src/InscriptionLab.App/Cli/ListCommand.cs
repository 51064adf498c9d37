using System;
using System.CommandLine;
using System.Linq;
using InscriptionLab.App.Examining;
using InscriptionLab.App.Listing;
using InscriptionLab.Evidence;

namespace InscriptionLab.App.Cli;

/// <summary>The command <c>list</c> as the command line knows it.</summary>
internal sealed class ListCommand(Composition composition, Terminal terminal)
{
    private static readonly string[] Fields =
        ["form", "maker", "status", "style", "address", "from", "to", "source", "note", "certainty", "signature-position", "signature-direction", "layout", "partners", "successor-of", "wording", "letter-height-mm", "letter-spacing"];

    private readonly Option<string?> _reference = new("--reference");
    private readonly Option<string> _by = new("--by") { DefaultValueFactory = _ => Environment.UserName };

    internal Command ToCommand() => new("list") { Check(), Search(), Show(), Add(), Merge(), Import(), History(), Checklist() };

    private Command Check()
    {
        var command = new Command("check") { _reference };
        command.SetAction(parsed => Report(parsed).Check());
        return command;
    }

    private Command Search()
    {
        var words = new Argument<string[]>("WORDS") { Arity = ArgumentArity.OneOrMore };
        var most = new Option<int>("--most") { DefaultValueFactory = _ => 8 };
        var command = new Command("search") { words, _reference, most };
        command.SetAction(parsed => Report(parsed).Search(string.Join(' ', parsed.GetRequiredValue(words)), parsed.GetValue(most)));
        return command;
    }

    private Command Show()
    {
        var house = new Argument<string[]>("HOUSE") { Arity = ArgumentArity.OneOrMore };
        var command = new Command("show") { house, _reference };
        command.SetAction(parsed => Report(parsed).Show(string.Join(' ', parsed.GetRequiredValue(house))));
        return command;
    }

    private Command Add()
    {
        var options = Fields.Select(field => new Option<string?>("--" + field)).ToArray();
        var command = new Command("add") { _reference, _by };
        foreach (var option in options)
        {
            command.Add(option);
        }

        command.SetAction(parsed => Report(parsed).Add(
            options.Where(option => option.Name is "--form" or "--maker" or "--status" || parsed.GetValue(option) is not null)
                .ToDictionary(option => option.Name[2..].Replace('-', '_'), option => parsed.GetValue(option) ?? string.Empty),
            parsed.GetRequiredValue(_by)));
        return command;
    }

    private Command Merge()
    {
        var other = new Argument<string>("OTHER");
        var command = new Command("merge") { other, _reference, _by };
        command.SetAction(parsed => Report(parsed).Merge(parsed.GetRequiredValue(other), parsed.GetRequiredValue(_by)));
        return command;
    }

    private Command Import()
    {
        var source = new Argument<string>("SOURCE");
        var mapping = new Option<string?>("--mapping");
        var linkedArt = new Option<bool>("--linked-art");
        var status = new Option<string>("--status") { DefaultValueFactory = _ => "attested" };
        var command = new Command("import") { source, _reference, mapping, linkedArt, status, _by };
        command.SetAction(parsed => Report(parsed).Import(parsed.GetRequiredValue(source), parsed.GetValue(mapping), parsed.GetValue(linkedArt), parsed.GetRequiredValue(status), parsed.GetRequiredValue(_by)));
        return command;
    }

    private Command History()
    {
        var command = new Command("history") { _reference };
        command.SetAction(parsed => Report(parsed).History());
        return command;
    }

    private Command Checklist()
    {
        var years = new Option<bool>("--years");
        var checklist = new Option<string?>("--checklist");
        var command = new Command("checklist") { years, checklist };
        command.SetAction(parsed => terminal.Output.Write(parsed.GetValue(years)
            ? ConstructionTable.DefaultText()
            : new ConstructionReader(PieceFacts.Load(null, parsed.GetValue(checklist), null).Construction?.Table ?? ConstructionTable.Default).Blank()));
        return command;
    }

    private ListReport Report(ParseResult parsed) => new(parsed.GetValue(_reference), terminal.Output, composition.Clock);
}
