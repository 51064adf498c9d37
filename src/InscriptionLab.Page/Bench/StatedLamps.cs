using System;
using System.Collections.Frozen;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using InscriptionLab.App.Examining;
using InscriptionLab.Gathering;
using InscriptionLab.Photos;

namespace InscriptionLab.Page.Bench;

/// <summary>Where persons say that the lamp of each photo of a piece stood; what was said last of a photo counts.</summary>
internal sealed class StatedLamps
{
    private readonly FrozenDictionary<string, (StatedLamp Lamp, string Person)> _lamps;

    private StatedLamps(IEnumerable<Correction> corrections) => _lamps = corrections
        .OfType<Correction.LampsStood>()
        .SelectMany(stated => stated.Lamps, (stated, lamp) => (lamp.Sha256, lamp.Lamp, stated.Person))
        .GroupBy(said => said.Sha256, StringComparer.Ordinal)
        .ToFrozenDictionary(said => said.Key, said => (said.Last().Lamp, said.Last().Person), StringComparer.Ordinal);

    /// <summary>Gets a name that changes whenever a lamp does; empty where none is stated.</summary>
    internal string Key => string.Join(',', _lamps.OrderBy(stated => stated.Key, StringComparer.Ordinal).Select(stated => $"{stated.Key}@{stated.Value.Lamp.Text}"));

    internal static StatedLamps Of(IEnumerable<Correction> corrections) => new(corrections);

    /// <summary>Gives the lamp of a photo; null where nobody said where it stood.</summary>
    internal StatedLamp? Of(Photo photo) => _lamps.TryGetValue(photo.Sha256, out var stated) ? stated.Lamp : null;

    /// <summary>Says of a view under several lamps who stated where they stood.</summary>
    internal SetExamination Told(SetExamination set)
    {
        var stated = set.Members.Where(member => _lamps.ContainsKey(member.Photo.Sha256)).Select(member => (Name: Path.GetFileName(member.Photo.File), _lamps[member.Photo.Sha256].Lamp, _lamps[member.Photo.Sha256].Person)).ToList();
        return set.Kind != SetKind.Raking || stated.Count == 0
            ? set
            : set with { Reasons = [.. set.Reasons, $"Where the lamps stood was stated by {string.Join(", ", stated.Select(one => one.Person).Distinct(StringComparer.Ordinal))}: {string.Join("; ", stated.Select(one => string.Create(CultureInfo.InvariantCulture, $"{one.Name} {one.Lamp.Side.Degrees:0.#} degrees clockwise from right, {one.Lamp.Height.Degrees:0.#} high")))}."] };
    }
}
