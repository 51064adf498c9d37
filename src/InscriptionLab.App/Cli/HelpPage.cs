using System.Linq;
using InscriptionLab.App.Guides;

namespace InscriptionLab.App.Cli;

/// <summary>The help texts, in the program's own words.</summary>
internal static class HelpPage
{
    private const string Overview = """
        InscriptionLab reads the lettering engraved on brass draw tubes and lens cells from photos,
        letter by letter and exactly as it is cut, and weighs it against a list of attested forms.

          ./lab serve              open the page on this machine: look, correct
          ./lab examine PHOTO...   find the tube, lay the lettering flat, read it, weigh it
          ./lab measure PHOTO...   measure a lens cell: rim, clear aperture, stop, in millimetres
          ./lab card FILE.pdf      a scale card to print and lay beside a cell
          ./lab thread PHOTO       pitch of a screw thread from its side
          ./lab calibrate-camera   take a lens's distortion out of measurements
          ./lab optics --objective what the glass could do, from its sizes
          ./lab survey FOLDER...   examine every photo of a folder, and count what was found
          ./lab feed, ./lab worker the same over several machines
          ./lab list WHAT          search, check, fill and merge a list of attested forms
          ./lab catalogue WHAT     find, correct and compare what was kept
          ./lab report OBJECT...   a report to print or to send: PDF or one web page
          ./lab export FORM        hand on what was kept, in a form that others read
          ./lab dataset            build a data set for research from what was kept
          ./lab assess FOLDER      how well the program does on photos whose truth is known
          ./lab test               run every test
          ./lab bench              time the stages, and compare with plain text recognition
          ./lab help COMMAND       more about one command
          ./lab --version          which version this is

        Guides to read, also on the page and as files in src/InscriptionLab.App/Guides:

        """;

    private const string Caution = """

        A finding is evidence, never a certificate. Never point a telescope at the Sun; do not polish
        an engraving to read it better, and do not force a tube or a cell that will not move.

        """;

    private const string Examine = """
        ./lab examine PHOTO... [--reference FILE] [--json FILE] [--out FOLDER] [--as raking|turns|separate]
                               [--catalogue FILE] [--construction FILE] [--checklist FILE] [--prior 3/17]
                               [--edges SIDES]... [--ring RIM]... [--lamp SIDE[:HEIGHT]]...
                               [--scale KIND:SIZE] [--plane-offset MM]

        Examines one photo, or several photos of one object. For each photo: where the tube lies, the
        lettering line by line, how sure each letter is and what else it may be, the nearest attested
        forms with every letter that differs, the finding with its reasons, what the photo cannot
        decide, and how to photograph it again. Nothing is corrected: what is cut is what is read, and
        a letter that cannot be seen is written ?.

          --reference FILE   attested forms and known copies (CSV or JSON, see the README);
                             without it the demonstration list of invented makers is used
          --json FILE        also write one JSON object a photo, one a line (- writes to the screen
                             in place of the report)
          --out FOLDER       where the examination goes: record, straightened strips, marked photos
                             and a page to look at (default: examination-NAME beside you, NAME being
                             the first photo's)
          --as raking        the photos show one view under different lamps: read them together
          --as turns         the tube was turned between the photos: read them together
          --as separate      never read them together
          --catalogue FILE   keep the examination in a catalogue as well (see ./lab help catalogue)
          --construction FILE  what you saw and measured on the piece (./lab list checklist writes an
                             empty one): dates it, and says which parts do not fit together
          --checklist FILE   the checklist with your own years (./lab list checklist --years writes it)
          --prior 3/17       your odds beforehand: 3 of 17 such pieces are the house's own, the rest
                             halved between others of its time and modern pieces; or 3:10:4 for the
                             three. Without it ratios are given and no probability. 3/17 is common
                             practice for much-copied names and rests on no count
          --scale KIND:SIZE  a scale lies beside the tube (kinds as for ./lab measure): diameter of the
                             tube, height of the lettering and its distance from the tube's end in
                             millimetres. The printed scale card is found without being named
          --plane-offset MM  how many millimetres the tube's axis lies above the scale; without it tube
                             and scale are taken to lie on one table
          --edges SIDES      the two long sides of the tube, where the program does not find them:
                             x1,y1,x2,y2/x3,y3,x4,y4 in pixels of the upright photo (they may lie
                             outside it). With several photos once for each, in their order; find
                             where the program shall look itself
          --ring RIM         the rim of the flat ring that carries the lettering, where the program does
                             not find it: x,y,a,b,degrees (its middle, its half axes in pixels, and how
                             far the first one is turned clockwise from the level), and as a sixth
                             number, if you know it, the opening as a share of the rim, such as 0.6; or
                             find. With several photos once for each, in their order
          --lamp SIDE        where the lamp of each photo stood, for the relief of a raking set: left,
                             upper-right:25 or degrees clockwise from right (135:20); after the colon
                             its height over the plane of the picture (20 degrees where left out).
                             Without it the shading of the tube tells

        Exit code: 0 done, 1 a photo or list could not be used, 2 the command was not understood.

        """;

    private const string Measure = """
        ./lab measure PHOTO... [--scale KIND:SIZE] [--plane-offset MM] [--camera FILE] [--one-cell]
                            [--catalogue FILE] [--json FILE] [--out FOLDER] [what ./lab optics asks]

        Measures a lens cell that was photographed with something of known size beside it: the outer
        rim, the clear aperture and the stop, each in millimetres with its expanded uncertainty.

          --scale KIND:SIZE   what lies beside the cell and its size: checkerboard:5mm (side of a
                              square), rule:1mm (from tick to tick), aruco:10mm (side of a marker),
                              card:99.7mm (the check line of ./lab card as you measured it), id1 (a
                              bank card, 85.60 by 53.98 mm), disc:23.25mm (a coin; where the photo does
                              not tell it from the cell, add a point on it: disc:23.25mm@x,y), or
                              points:50mm@x,y/x,y (two points that you mark, pixels of the upright
                              photo); without it the program looks for card, markers, board and rule
          --plane-offset MM   how many millimetres the rim of the cell lies above the scale (0 = same
                              height, negative = below); without it the diameters hold for a scale
                              level with the rim, and the uncertainty counts one on the table
          --camera FILE       calibration from ./lab calibrate-camera: each photo is straightened first,
                              and the record's pixels are those of the straightened photo
          --one-cell          the photos show one cell: they are measured one by one and combined, their
                              scatter counted; lay cell and scale down anew before each photo
          --catalogue FILE    also keep the measurements in this catalogue
          --focal SIZE, --stop-distance SIZE, --through-glass, --eyepiece-focal SIZE,
          --exit-pupil SIZE, --magnification N, --index N, --abbe V1,V2
                              what else is known of the telescope: with them the report says what the
                              glass could do (see ./lab help optics)
          --json FILE         also write one JSON object a photo, one a line (- writes to the screen
                              in place of the report)
          --out FOLDER        where pictures and the record go (default: measurement-NAME beside you, NAME
                              being the first photo's)

        Exit code: 0 done, 1 a photo could not be used, 2 the command was not understood.

        """;

    private const string Assess = """
        ./lab assess FOLDER [--json FILE] [--write-readme FILE] [--keep FILE] [--predictions FILE]
                            [--golden FILE] [--advice] [--tubes [--pictures FOLDER]] [--reader]
                            [--findings] [--turns] [--views] [--lamps] [--sharpness] [--likeness]

        Runs the program on every photo of a folder that has truth files beside it (FOLDER/truth) and
        prints how well it did, each figure with the counts behind it. --advice plants faults in the
        photos and looks at the advice, --tubes looks at the tubes alone, --reader at styles, stated
        probabilities and the second reader, --findings at which misspelt names are named with their
        letters and whether any attested one is said to differ, beside the attested forms of the
        demonstration list, --turns at turned photos joined to one strip: turns, seams, reading,
        --lamps at the side from which the light is said to come, --sharpness at what blur does to
        letters and to their stated probabilities. --views turns each photo upside down and mirrors
        it, and looks at what is said of that. --likeness looks at whether the likest lines are the same
        mark in another photo.

        --keep writes the record of every photo to a file, --predictions judges such a file in place of
        a new run, --golden checks that this run gives the same as such a file, and --pictures keeps the
        photos with true and found outlines.

        """;

    private const string Test = """
        ./lab test [what dotnet test takes]

        Runs every test of the program, which takes many minutes. One project alone, while you change
        something: dotnet test --project tests/InscriptionLab.Core.Tests (see DEVELOPERS.md).

        """;

    private const string Bench = """
        ./lab bench [stages|sizes|search|likeness|survey N|beside]

        Measures time and memory on this machine: each stage; a photo at 2, 12 and 24 megapixels; the search
        in 100,000 forms; the likest of 100,000 marks; a survey of N photos; and examine beside plain text
        recognition. Without a word: stages and beside. Leave the machine alone meanwhile.

        """;

    /// <summary>Gives the page of a command that needs no photo of a tube, or null.</summary>
    internal static string? OfInstrument(string command) => command switch
    {
        "card" => CardCommand.Page,
        "optics" => OpticsCommand.Page,
        "thread" => ThreadCommand.Page,
        "calibrate-camera" => CalibrateCameraCommand.Page,
        _ => null,
    };

    /// <summary>Gives the page that the arguments ask for, or null where they ask for something else or for a page that there is not.</summary>
    internal static string? AskedFor(string[] arguments)
    {
        if (arguments is [] or ["help"] or ["--help" or "-h"])
        {
            return Start();
        }

        var asksByWord = arguments[0] == "help";
        return asksByWord || arguments.Any(argument => argument is "--help" or "-h")
            ? arguments.Select(argument => KeepingPages.Of(argument) ?? OfInstrument(argument) ?? Of(argument)).FirstOrDefault(page => page is not null)
                ?? (asksByWord && GuideShelf.Find(arguments[1]) is { } guide ? GuideText.Of(guide) : null)
            : null;
    }

    private static string Start() => Overview
        + string.Join('\n', GuideShelf.All().Select(guide => $"  {"./lab help " + guide.Name,-28}{guide.Title}"))
        + "\n" + Caution;

    private static string? Of(string command) => command switch
    {
        "serve" => ServePage.Text,
        "examine" => Examine,
        "measure" => Measure,
        "assess" => Assess,
        "test" => Test,
        "bench" => Bench,
        _ => null,
    };
}
