using System;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using System.Security.Cryptography;
using System.Text;
using System.Threading;
using InscriptionLab.App.Examining;
using InscriptionLab.App.Records;
using InscriptionLab.Findings;

namespace InscriptionLab.Page.Bench;

/// <summary>Reads the photos of a piece together once each of them is finished. A correction that changes no reading runs only the weighing again. Used by one thread at a time.</summary>
internal sealed class JointChain
{
    /// <summary>How many results are kept: so many steps can be undone at no cost. A form of a surface takes tens of megabytes.</summary>
    private const int Kept = 2;

    private const int DigitsOfKey = 12;

    /// <summary>How many findings over letters that persons read are kept; they take next to no memory.</summary>
    private const int KeptFindings = 12;

    private readonly Memo<string, ImmutableArray<SetExamination>> _sets = new(Kept);
    private readonly Memo<string, Finding> _findings = new(KeptFindings);

    /// <summary>Reads the photos together.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="stages">The stages.</param>
    /// <param name="tell">Told the state before and after.</param>
    /// <param name="cancel">Stops between photos.</param>
    internal void Run(Piece piece, BenchStages stages, Action<JointState> tell, CancellationToken cancel)
    {
        var photos = piece.Photos.Select(photo => (photo.Id, photo.State)).ToList();
        ImmutableArray<Examination> members = [.. photos.Select(photo => photo.State.ToExamination()).OfType<Examination>()];
        if (members.Length < 2)
        {
            if (piece.Together != JointState.None)
            {
                tell(JointState.None);
            }

            return;
        }

        var houses = PhotosOfOneObject.Houses(members);
        var unlike = houses.Length < 2 ? null : PhotosOfOneObject.Unlike(houses);
        var lamps = StatedLamps.Of(piece.Corrections);
        var key = Short(string.Join(';', photos.Select(photo => $"{photo.Id}:{photo.State.FindingKey}").Append(lamps.Key)));
        var basis = Short(string.Join(';', photos.Select(photo => $"{photo.Id}:{photo.State.ReadingKey}").Append(lamps.Key)));
        var known = piece.Knowledge;
        tell(piece.Together with { IsWorking = true });
        var sets = _sets.Get(key, () => stages.Together(members, lamps.Of, cancel)).Result;
        tell(new JointState(
            false,
            [.. sets.Select((set, i) => Corrected(lamps.Told(Fresh(set, members)), string.Create(CultureInfo.InvariantCulture, $"{key}-{i}"), basis, piece, stages, known))],
            null,
            unlike));
    }

    /// <summary>Lays what persons read over a joint reading, and finds and weighs anew what follows from it; without any only the weighing runs.</summary>
    private JointSet Corrected(SetExamination set, string key, string basis, Piece piece, BenchStages stages, PieceKnowledge known)
    {
        var place = $"set-{Short(string.Join(';', set.Members.Select(member => member.Photo.Sha256)))}";
        ImmutableArray<Correction> corrections = [.. piece.Corrections.Where(correction => correction.PhotoId == place)];
        var hand = new HandLines(_ => null);
        var lines = hand.Apply(set.Reading.Lines, $"{basis}-{Words.For(set.Kind)}", corrections);
        var read = set;
        if (lines.Any(line => line.HasHandLetters))
        {
            var reading = set.Reading with { Lines = [.. lines.Select(line => line.Reading)] };
            var counted = string.Join(',', corrections.Where(correction => !hand.SetAside.Contains(correction.Id)).Select(correction => correction.Id));
            var finding = _findings.Get($"{key}/{counted}", () => stages.Examining.Judge(stages.Examining.Compare(reading))).Result;
            read = set with { Reading = reading, Finding = finding, Reasons = [.. set.Reasons, .. HandLines.Sentences(lines)] };
        }

        return new JointSet(key, place, set, SetExaminer.Weighed(read, stages.Examining, known.With(Evidence.Circumstances.None)), lines, hand.SetAside);
    }

    /// <summary>Gives a kept set with the photos' examinations as they are now: their evidence may have changed since.</summary>
    private static SetExamination Fresh(SetExamination set, ImmutableArray<Examination> members) =>
        set with { Members = [.. set.Members.Select(member => members.First(now => now.Photo.Sha256 == member.Photo.Sha256))] };

    private static string Short(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)))[..DigitsOfKey];
}
