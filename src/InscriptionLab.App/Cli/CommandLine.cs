using System;
using System.CommandLine;
using System.IO;
using System.Threading;
using InscriptionLab.App.Reports;
using InscriptionLab.Cataloguing;
using InscriptionLab.Outcomes;

namespace InscriptionLab.App.Cli;

/// <summary>The whole command line: parses, runs one command, and turns every failure into one sentence and an exit code.</summary>
internal sealed class CommandLine
{
    /// <summary>A word that begins with @ is a word: no file is opened for it.</summary>
    private static readonly ParserConfiguration Plain = new() { ResponseFileTokenReplacer = null };

    private readonly Terminal _terminal;
    private readonly RootCommand _root;
    private CancellationToken _cancel;

    internal CommandLine(Composition composition, Terminal terminal)
    {
        _terminal = terminal;
        _root = new RootCommand("InscriptionLab");
        _root.Options.Clear();
        _root.Add(new ExamineCommand(composition, terminal).ToCommand(() => _cancel));
        _root.Add(new MeasureCommand(composition, terminal).ToCommand(() => _cancel));
        _root.Add(new CardCommand(terminal).ToCommand());
        _root.Add(new OpticsCommand(terminal).ToCommand());
        _root.Add(new ThreadCommand(composition, terminal).ToCommand(() => _cancel));
        _root.Add(new CalibrateCameraCommand(composition, terminal).ToCommand(() => _cancel));
        _root.Add(new ListCommand(composition, terminal).ToCommand());
        _root.Add(new CatalogueCommand(composition, terminal).ToCommand());
        _root.Add(new SurveyCommand(composition, terminal).ToCommand(() => _cancel));
        _root.Add(new WorkerCommand(composition, terminal).ToFeed(() => _cancel));
        _root.Add(new WorkerCommand(composition, terminal).ToWorker(() => _cancel));
        _root.Add(new ExportCommand(composition, terminal).ToExport(() => _cancel));
        _root.Add(new ExportCommand(composition, terminal).ToDataset(() => _cancel));
        _root.Add(new ReportCommand(composition, terminal).ToCommand(() => _cancel));
    }

    /// <summary>Runs one command line.</summary>
    /// <returns>An <see cref="ExitCode"/>.</returns>
    internal int Run(string[] arguments, CancellationToken cancel)
    {
        _cancel = cancel;
        if (HelpPage.AskedFor(arguments) is { } page)
        {
            _terminal.Output.Write(page);
            return ExitCode.Done;
        }

        if (arguments is ["--version"])
        {
            _terminal.Output.WriteLine(ProgramFacts.NameAndVersion);
            return ExitCode.Done;
        }

        return Guarded(() => Parsed(arguments));
    }

    /// <summary>Says what is wrong with a command line, or null where a command would run.</summary>
    internal string? ComplaintOf(string[] arguments) => HelpPage.AskedFor(arguments) is null ? Complaint.About(_root.Parse(arguments, Plain), arguments) : null;

    private int Parsed(string[] arguments)
    {
        var parsed = _root.Parse(arguments, Plain);
        if (Complaint.About(parsed, arguments) is { } complaint)
        {
            _terminal.Error.WriteLine(complaint);
            return ExitCode.Misused;
        }

        return parsed.Invoke(new InvocationConfiguration
        {
            EnableDefaultExceptionHandler = false,
            Output = _terminal.Output,
            Error = _terminal.Error,
        });
    }

    private int Guarded(Func<int> run)
    {
        try
        {
            return run();
        }
        catch (InscriptionLabException problem)
        {
            _terminal.Error.WriteLine(OneLine.Of(problem.Message));
            return ExitCode.Failed;
        }
        catch (OperationCanceledException)
        {
            _terminal.Error.WriteLine("Stopped. What was finished before is written; the rest is not.");
            return ExitCode.Interrupted;
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            _terminal.Error.WriteLine(OneLine.Of($"{problem.Message.TrimEnd('.')}; name another file or folder, or check that you may open it."));
            return ExitCode.Failed;
        }
        catch (Exception problem) when (CatalogueFault.Of(problem) is { } sentence)
        {
            _terminal.Error.WriteLine(OneLine.Of(sentence));
            return ExitCode.Failed;
        }
    }
}
