using System;
using System.Collections.Immutable;
using System.Globalization;
using InscriptionLab.Outcomes;

namespace InscriptionLab.Advice;

/// <summary>What is said of each limit, and the steps to a better photo. Steps are common practice of photographing small relief unless a figure is given.</summary>
internal static class AdviceWords
{
    /// <summary>How many times sharper than the letters the tube's outlines must be to be called sharp beside them (a choice).</summary>
    private const double OutlinesSharper = 2;

    internal static string Sentence(LimitKind kind) => kind switch
    {
        LimitKind.Pixels => "The letters are too small in the photo.",
        LimitKind.Focus => "The lettering is out of focus.",
        LimitKind.Motion => "The camera or the tube moved during the exposure.",
        LimitKind.Glare => "A reflection washes out part of the lettering.",
        LimitKind.TooDark => "The photo is too dark.",
        LimitKind.TooBright => "The lettering is overexposed.",
        LimitKind.LightAlongStrokes => "The light runs along some of the strokes and hides them.",
        LimitKind.FlatLight => "The light is too flat: the grooves hardly stand out.",
        LimitKind.Angle => "The lettering faces away from the camera.",
        LimitKind.CutByFrame => "The frame cuts the lettering.",
        LimitKind.Compression => "The file was squeezed so hard that its blocks hide strokes.",
        LimitKind.NoScale => "No marker card or checkerboard was seen, so nothing tells how large the letters are.",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No sentence for this limit."),
    };

    internal static ImmutableArray<string> Steps(LimitKind kind, LetteringMeasures m, double severity) => kind switch
    {
        LimitKind.Pixels =>
        [
            string.Create(CultureInfo.InvariantCulture, $"Come closer until the letters are {Math.Ceiling(Math.Max(2, 1.5 * severity))} times as tall: the lettering should fill most of the frame's width."),
            "If the phone no longer focuses there, step back a little and use its optical (2x or 3x) lens, not digital zoom.",
            "Send the original file, not a screenshot or a preview.",
        ],
        LimitKind.Focus =>
        [
            Behind(m) + "Touch the lettering on the screen so that the camera focuses there, not on the edge of the tube or on the background.",
            "Keep at least the camera's shortest distance (about 10 cm on most phones) and support the phone on something firm.",
        ],
        LimitKind.Motion =>
        [
            "Rest the phone on a pile of books and release with the timer or the earphone button.",
            "Put more light on the tube, so that the exposure is shorter.",
            string.Create(CultureInfo.InvariantCulture, $"The movement ran at about {Positive(m.WideDirection.Degrees):0} degrees to the picture's lower edge: stop the tube from rolling, or the hand from dipping, that way."),
        ],
        LimitKind.Glare =>
        [
            "Move the lamp sideways by about a hand's width, or turn the tube 10 to 15 degrees about its axis, until the streak lies beside the letters.",
            "Switch the flash off and light from one side, the lamp 15 to 30 degrees above the surface.",
            "Hold a sheet of white paper between lamp and tube to make the reflection broad and weak.",
        ],
        LimitKind.TooDark =>
        [
            "Bring one lamp within 30 cm of the tube, low and to one side.",
            "Touch the lettering on the screen and raise the exposure by 1 to 2 steps.",
        ],
        LimitKind.TooBright =>
        [
            "Touch the lettering on the screen and lower the exposure by 1 to 2 steps.",
            "Switch the flash off, and take the lamp twice as far away.",
        ],
        LimitKind.LightAlongStrokes => m.StemsToBars < 1
            ?
            [
                From(m) + "ut the lamp at one end of the line, 15 to 30 degrees above the surface, so that its light runs along the line and across the upright strokes.",
                "Then take the same view once more with the lamp above the line, and read both together (--as raking).",
            ]
            :
            [
                From(m) + "ut the lamp above or below the line, 15 to 30 degrees above the surface, so that its light runs across the level strokes.",
                "Then take the same view once more with the lamp at the end of the line, and read both together (--as raking).",
            ],
        LimitKind.FlatLight =>
        [
            "Darken the room, switch the flash off, and use one small lamp 15 to 30 degrees above the surface.",
            "Begin with the lamp at one end of the line, so that its light crosses the upright strokes.",
            "Take four photos from one spot with the lamp left, right, above and below, and read them together (--as raking).",
        ],
        LimitKind.Angle => [Turn(m), "If the tube must not be turned, move the camera round it by as much."],
        LimitKind.CutByFrame => ["Aim at the middle of the lettering and leave a letter's width of bare metal on every side."],
        LimitKind.Compression =>
        [
            "Ask for, or send, the original file from the camera: messengers, web shops and screenshots squeeze it.",
            "Set the camera to its highest quality, and crop instead of shrinking.",
        ],
        LimitKind.NoScale => ["Lay a checkerboard or marker card, or a millimetre rule, along the tube, at the height of the lettering and right beside it, not on the table below."],
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No steps for this limit."),
    };

    /// <summary>Says where the camera focused, where the outlines tell it: they lie behind the lettering by half the tube's diameter.</summary>
    private static string Behind(LetteringMeasures m) => m.Read && m.Outlines is Outcome<OutlineSharpness>.Found { Value: var outlines } && outlines.Blur.Pixels * OutlinesSharper < m.SharpBlur.Pixels
        ? "The tube's outlines are sharp, so the camera focused behind the lettering, or on the ground. "
        : string.Empty;

    /// <summary>Begins a step with where the lamp is, so that "put" says where it should go.</summary>
    private static string From(LetteringMeasures m) => m.Light is Outcome<LampSight>.Found { Value: var lamp } ? $"The light seems to come from {lamp.Words}. P" : "P";

    private static string Turn(LetteringMeasures m)
    {
        if (m.Around is not { } around || Math.Abs(around.Degrees) < 20)
        {
            return "Look square onto the tube: hold the camera over the middle of the line, its back parallel to the tube.";
        }

        var toward = around.Radians > 0 ? "upper or left" : "lower or right";
        return string.Create(CultureInfo.InvariantCulture, $"Turn the tube by about {Math.Round(Math.Abs(around.Degrees) / 5) * 5:0} degrees, the lettering toward the outline that lies on the {toward} side of the picture, until it faces the camera.");
    }

    private static double Positive(double degrees) => ((degrees % 180) + 180) % 180;
}
