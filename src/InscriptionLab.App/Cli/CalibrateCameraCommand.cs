using System;
using System.CommandLine;
using System.Globalization;
using System.Linq;
using System.Threading;
using InscriptionLab.App.Measuring;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using InscriptionLab.Vision.Cameras;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Cli;

/// <summary>The command <c>calibrate-camera</c>: photos of a chessboard to a file that <c>measure --camera</c> takes.</summary>
internal sealed class CalibrateCameraCommand(Composition composition, Terminal terminal)
{
    internal const string Page = """
        ./lab calibrate-camera PHOTO... --board COLUMNSxROWS --out FILE

        Works out focal length and distortion of a camera from photos of one flat chessboard, taken from
        ten or more sides with the lens, zoom and focus that you measure with. COLUMNSxROWS counts the
        inner corners, where four squares meet (9x6 for a board of 10 by 7 squares). Pass the file to
        ./lab measure PHOTO --camera FILE; photos must have the shape and orientation of those here.

        Exit code: 0 done, 1 the photos give no calibration, 2 the command was not understood.

        """;

    private const int FewestCorners = 3;
    private const int MostCorners = 40;

    private readonly Argument<string[]> _photos = new("PHOTO") { Arity = ArgumentArity.OneOrMore };
    private readonly Option<string> _board = new("--board") { Required = true };
    private readonly Option<string> _out = new("--out") { Required = true };

    internal Command ToCommand(Func<CancellationToken> cancel)
    {
        var command = new Command("calibrate-camera") { _photos, _board, _out };
        command.SetAction(parsed => Run(parsed.GetRequiredValue(_photos), parsed.GetRequiredValue(_board), parsed.GetRequiredValue(_out), cancel()));
        return command;
    }

    private int Run(string[] files, string board, string file, CancellationToken cancel)
    {
        var sides = board.Split('x').Select(side => int.TryParse(side, NumberStyles.None, CultureInfo.InvariantCulture, out var count) ? count : 0).ToArray();
        if (sides.Length != 2 || sides.Any(side => side is < FewestCorners or > MostCorners))
        {
            terminal.Error.WriteLine($"--board needs the inner corners along both sides, for example 9x6, not {board}.");
            return ExitCode.Misused;
        }

        var photos = files.Select(composition.Open).ToArray();
        switch (CameraCalibrator.Run(photos, sides[0], sides[1], null, cancel))
        {
            case Outcome<CameraCalibration>.Found found:
                CalibrationFile.Write(file, found.Value);
                var it = found.Value;
                terminal.Output.WriteLine(Invariant($"focal length {it.FocalX:0.00} x {it.FocalY:0.00} pixels, principal point ({it.PrincipalX:0.00}, {it.PrincipalY:0.00}), {it.RmsPixels:0.0000} pixels root mean square at the corners of {it.Photos} photos"));
                terminal.Output.WriteLine($"written to {file}: pass it with ./lab measure PHOTO --camera {file}");
                return ExitCode.Done;
            case Outcome<CameraCalibration>.Declined declined:
                throw new InscriptionLabException($"{declined.Refusal.Sentence} {declined.Refusal.Remedy}");
            default:
                throw new InvalidOperationException("An outcome is found or declined.");
        }
    }
}
