using System;
using InscriptionLab.Advice;
using InscriptionLab.Photos;

namespace InscriptionLab.Assess.Planting;

/// <summary>A photo with one fault planted, or untouched.</summary>
/// <param name="Name">Name for people.</param>
/// <param name="Fault">The fault; null for an untouched photo.</param>
/// <param name="Spoil">Makes the photo from the untouched one.</param>
internal sealed record PlantedCase(string Name, LimitKind? Fault, Func<Photo, Photo> Spoil);
