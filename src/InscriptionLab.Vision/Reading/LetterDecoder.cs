using System;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Lines;
using InscriptionLab.Measures;
using InscriptionLab.Readings;

namespace InscriptionLab.Vision.Reading;

/// <summary>Turns what the network saw in a line into letters with probabilities, rivals and boxes.</summary>
/// <param name="options">How frames become letters.</param>
internal sealed class LetterDecoder(EngravedReaderOptions options)
{
    /// <summary>Decodes a line.</summary>
    internal LineReading Decode(LetteringLine line, LineSight sight)
    {
        var (posteriors, text, evidence) = Spell(sight.Posteriors);
        var weighed = new LetterCase(line, sight).Weigh(posteriors, evidence);
        if (!ReferenceEquals(weighed, posteriors))
        {
            (posteriors, text, evidence) = Spell(weighed);
        }

        var boxes = new LetterBoxes(line, sight).Of(evidence);
        var letters = evidence.Select((letter, index) => Letter(letter, boxes[index], line)).ToImmutableArray();
        var confidence = letters.IsEmpty ? 0 : Math.Exp(CtcScorer.LogProbability(posteriors, text) ?? double.NegativeInfinity);
        return new LineReading(line, letters, Probability.From(confidence), posteriors);
    }

    /// <summary>Finds the most probable spelling and what the frames say of each of its letters.</summary>
    private (LinePosteriors Posteriors, string Text, ImmutableArray<LetterEvidence> Letters) Spell(LinePosteriors posteriors)
    {
        var text = CtcDecoder.NBest(posteriors, options.Beam)[0].Text;
        if (HasEndSpace(text))
        {
            posteriors = WithoutEndSpaces(posteriors, text);
            text = CtcDecoder.NBest(posteriors, options.Beam).FirstOrDefault(hypothesis => !HasEndSpace(hypothesis.Text))?.Text ?? string.Empty;
        }

        return (posteriors, text, text.Length == 0 ? [] : LetterWeigher.Weigh(posteriors, text, options.Weigher));
    }

    private static bool HasEndSpace(string text) => text.StartsWith(' ') || text.EndsWith(' ');

    /// <summary>Ground before and behind a line may look like a space; a space that parts nothing is not lettering, so there it is counted as blank.</summary>
    private static LinePosteriors WithoutEndSpaces(LinePosteriors posteriors, string text)
    {
        var evidence = LetterWeigher.Weigh(posteriors, text);
        var ink = evidence.Where(letter => letter.Character != " ").ToArray();
        var first = ink.Length == 0 ? posteriors.Frames : ink[0].StartFrame;
        var last = ink.Length == 0 ? -1 : ink[^1].EndFrame;
        var space = posteriors.Classes.IndexOf(" ");
        var numbers = new float[posteriors.Frames * posteriors.Classes.Length];
        for (var frame = 0; frame < posteriors.Frames; frame++)
        {
            var row = numbers.AsSpan(frame * posteriors.Classes.Length, posteriors.Classes.Length);
            posteriors.Frame(frame).CopyTo(row);
            if (frame < first || frame > last)
            {
                row[posteriors.Blank] = (float)Math.Log(Math.Exp(row[posteriors.Blank]) + Math.Exp(row[space]));
                row[space] = float.NegativeInfinity;
            }
        }

        return new LinePosteriors(posteriors.Classes, posteriors.Blank, numbers);
    }

    private Letter Letter(LetterEvidence evidence, Quad inCrop, LetteringLine line)
    {
        var own = evidence.Candidates.FirstOrDefault(candidate => candidate.Character == evidence.Character)?.Probability ?? Probability.Zero;
        var best = evidence.Candidates[0].Probability;
        var shown = evidence.Character != " " && best < options.UnreadableBelow ? Readings.Letter.Unreadable : evidence.Character;
        var alternatives = evidence.Candidates.Where(candidate => candidate.Probability >= options.AlternativesFrom && candidate.Character != shown);
        return new Letter(shown, shown == evidence.Character ? own : best, [.. alternatives], LetterQuads.ToPhoto(inCrop, line.CropToPhoto), inCrop);
    }
}
