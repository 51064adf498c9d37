using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Threading;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using InscriptionLab.Reliefs;
using InscriptionLab.Strips;
using InscriptionLab.Tubes;

namespace InscriptionLab.App.Examining;

/// <summary>The stages that several photos of one tube go through together, as functions.</summary>
/// <param name="Match">Photos and the tube in each to fits of their surfaces, pair by pair.</param>
/// <param name="Join">Photos, the tube in each and known fits to one strip round the tube.</param>
/// <param name="Shape">Photos of one view, their tube, the middle of the lettering and the lamps, where the user stated them, to the form of the surface.</param>
/// <param name="Draw">The form to a picture of its grooves that can be read.</param>
internal sealed record SetStages(
    Func<IReadOnlyList<Photo>, IReadOnlyList<Tube>, CancellationToken, ImmutableArray<TurnMatch>> Match,
    Func<IReadOnlyList<Photo>, IReadOnlyList<Tube>, ImmutableArray<TurnMatch>, CancellationToken, Outcome<TurnMosaic>> Join,
    Func<IReadOnlyList<Photo>, Tube, PixelPoint?, CancellationToken, Outcome<SurfaceRelief>> Shape,
    Func<SurfaceRelief, GrayImage> Draw);
