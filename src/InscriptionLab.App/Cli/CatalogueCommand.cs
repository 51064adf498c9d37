using System;
using System.CommandLine;
using System.Globalization;
using System.Linq;
using InscriptionLab.App.Cataloguing;
using InscriptionLab.Cataloguing;
using InscriptionLab.Outcomes;

namespace InscriptionLab.App.Cli;

/// <summary>The command <c>catalogue</c> as the command line knows it.</summary>
internal sealed class CatalogueCommand(Composition composition, Terminal terminal)
{
    /// <summary>Name of the catalogue where the user names none.</summary>
    internal const string DefaultName = "inscriptionlab.db";

    private static readonly string[] Outcomes = ["agrees", "differs", "undecided", "nothing-read"];
    private static readonly string[] Roles = ["outer", "clear", "stop"];

    private readonly Option<string> _catalogue = new("--catalogue") { DefaultValueFactory = _ => DefaultName };
    private readonly Option<string> _by = new("--by") { DefaultValueFactory = _ => Environment.UserName };

    internal Command ToCommand()
    {
        var command = new Command("catalogue");
        command.Add(Find());
        command.Add(Like());
        command.Add(Correct());
        command.Add(Describe());
        command.Add(WithKey("trash", (report, key, by) => report.Trash(key, trashed: true, by)));
        command.Add(WithKey("restore", (report, key, by) => report.Trash(key, trashed: false, by)));
        command.Add(Move());
        command.Add(WithNumber("show", (report, number) => report.Show(number)));
        command.Add(Plain("undo", report => report.Undo()));
        command.Add(Plain("steps", report => report.Steps()));
        command.Add(Check());
        command.Add(WithFile("export", (report, file) => report.Export(file)));
        command.Add(WithFile("import", (report, file) => report.Import(file), mayBeNew: true));
        return command;
    }

    private Command Find()
    {
        Option<string?> text = new("--text"), near = new("--near"), pattern = new("--pattern"), maker = new("--maker"), outcome = new("--finding"), of = new("--object"), from = new("--from"), before = new("--before");
        Option<int> edits = new("--differ") { DefaultValueFactory = _ => new SearchQuery().Edits }, most = new("--most") { DefaultValueFactory = _ => new SearchQuery().Most };
        Option<bool> alternatives = new("--alternatives"), trash = new("--trash");
        Option<string?> role = new("--measured");
        Option<string?> seen = new("--seen"), answer = new("--answer");
        Option<int?> fromYear = new("--from-year"), toYear = new("--to-year");
        Option<double?> fromMm = new("--from-mm"), toMm = new("--to-mm");
        var command = new Command("find") { _catalogue, text, near, edits, pattern, alternatives, maker, outcome, of, from, before, role, fromMm, toMm, seen, answer, fromYear, toYear, trash, most };
        command.SetAction(parsed => Report(parsed).Find(Sensible(new SearchQuery
        {
            Text = parsed.GetValue(text),
            Near = parsed.GetValue(near),
            Edits = parsed.GetValue(edits),
            Pattern = parsed.GetValue(pattern),
            Alternatives = parsed.GetValue(alternatives),
            Maker = parsed.GetValue(maker),
            Outcome = parsed.GetValue(outcome),
            ObjectKey = parsed.GetValue(of),
            From = Day(parsed.GetValue(from)),
            Before = Day(parsed.GetValue(before)),
            Role = parsed.GetValue(role) ?? new SearchQuery().Role,
            FromMm = parsed.GetValue(fromMm),
            ToMm = parsed.GetValue(toMm),
            Feature = parsed.GetValue(seen),
            Answer = parsed.GetValue(answer),
            FromYear = parsed.GetValue(fromYear),
            ToYear = parsed.GetValue(toYear),
            InTrash = parsed.GetValue(trash),
            Most = Math.Max(1, parsed.GetValue(most)),
        })));
        return command;
    }

    private Command Like()
    {
        var number = new Argument<long>("EXAMINATION");
        var line = new Option<int>("--line") { DefaultValueFactory = _ => 1 };
        var most = new Option<int>("--most") { DefaultValueFactory = _ => 10 };
        var command = new Command("like") { number, _catalogue, line, most };
        command.SetAction(parsed => Report(parsed).Like(parsed.GetValue(number), parsed.GetValue(line), Math.Max(1, parsed.GetValue(most))));
        return command;
    }

    private Command Correct()
    {
        var number = new Argument<long>("EXAMINATION");
        var becomes = new Argument<string>("TEXT");
        var line = new Option<int>("--line") { DefaultValueFactory = _ => 1 };
        var reason = new Option<string>("--reason") { DefaultValueFactory = _ => string.Empty };
        var command = new Command("correct") { number, becomes, _catalogue, line, _by, reason };
        command.SetAction(parsed => Report(parsed).Correct(parsed.GetValue(number), parsed.GetValue(line), parsed.GetRequiredValue(becomes), parsed.GetRequiredValue(_by), parsed.GetRequiredValue(reason)));
        return command;
    }

    private Command Describe()
    {
        var key = new Argument<string>("OBJECT");
        Option<string?> title = new("--title"), note = new("--note"), offered = new("--offered-as");
        var command = new Command("describe") { key, _catalogue, title, note, offered, _by };
        command.SetAction(parsed => Report(parsed).Describe(parsed.GetRequiredValue(key), parsed.GetValue(title), parsed.GetValue(note), parsed.GetValue(offered), parsed.GetRequiredValue(_by)));
        return command;
    }

    private Command Move()
    {
        var sha256 = new Argument<string>("PHOTO-SHA256");
        var key = new Argument<string>("OBJECT");
        var command = new Command("move") { sha256, key, _catalogue, _by };
        command.SetAction(parsed => Report(parsed).Move(parsed.GetRequiredValue(sha256), parsed.GetRequiredValue(key), parsed.GetRequiredValue(_by)));
        return command;
    }

    private Command Check()
    {
        var command = new Command("check") { _catalogue };
        command.SetAction(parsed => Report(parsed).Check() ? ExitCode.Done : ExitCode.Failed);
        return command;
    }

    private Command Plain(string name, Action<CatalogueReport> act)
    {
        var command = new Command(name) { _catalogue };
        command.SetAction(parsed => act(Report(parsed)));
        return command;
    }

    private Command WithNumber(string name, Action<CatalogueReport, long> act)
    {
        var number = new Argument<long>("EXAMINATION");
        var command = new Command(name) { number, _catalogue };
        command.SetAction(parsed => act(Report(parsed), parsed.GetValue(number)));
        return command;
    }

    private Command WithFile(string name, Action<CatalogueReport, string> act, bool mayBeNew = false)
    {
        var file = new Argument<string>("FILE");
        var command = new Command(name) { file, _catalogue };
        command.SetAction(parsed => act(Report(parsed, mayBeNew), parsed.GetRequiredValue(file)));
        return command;
    }

    private Command WithKey(string name, Action<CatalogueReport, string, string> act)
    {
        var key = new Argument<string>("OBJECT");
        var command = new Command(name) { key, _catalogue, _by };
        command.SetAction(parsed => act(Report(parsed), parsed.GetRequiredValue(key), parsed.GetRequiredValue(_by)));
        return command;
    }

    private CatalogueReport Report(ParseResult parsed, bool mayBeNew = false) => new(parsed.GetRequiredValue(_catalogue), terminal.Output, composition.Clock, mayBeNew);

    /// <summary>Refuses what nothing can match: it is more likely a slip than a question.</summary>
    private static SearchQuery Sensible(SearchQuery query)
    {
        if (query.Outcome is { } outcome && !Outcomes.Contains(outcome, StringComparer.Ordinal))
        {
            throw new InscriptionLabException($"There is no finding {outcome}; there are {string.Join(", ", Outcomes)}.");
        }

        if (!Roles.Contains(query.Role, StringComparer.Ordinal))
        {
            throw new InscriptionLabException($"Nothing called {query.Role} is measured; there are {string.Join(", ", Roles)} (rim, clear aperture, stop).");
        }

        if (query.FromMm > query.ToMm)
        {
            throw new InscriptionLabException(string.Create(CultureInfo.InvariantCulture, $"No size lies from {query.FromMm} to {query.ToMm} mm: give the smaller one with --from-mm."));
        }

        return query.From >= query.Before
            ? throw new InscriptionLabException(string.Create(CultureInfo.InvariantCulture, $"No day lies from {query.From:yyyy-MM-dd} to before {query.Before:yyyy-MM-dd}: give the earlier one with --from."))
            : query;
    }

    private static DateTimeOffset? Day(string? text)
    {
        if (text is null)
        {
            return null;
        }

        return DateTimeOffset.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var day)
            ? day
            : throw new InscriptionLabException($"The date {text} is not understood: write it like 2026-03-01.");
    }
}
