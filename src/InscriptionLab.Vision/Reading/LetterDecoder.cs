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
        // Ground before and behind the line may look like a space; a space that parts nothing is not lettering.
        var text = CtcDecoder.NBest(sight.Posteriors, options.Beam)[0].Text.Trim(' ');
        var evidence = text.Length == 0 ? [] : LetterWeigher.Weigh(sight.Posteriors, text, options.Weigher);
        var boxes = new LetterBoxes(line, sight).Of(evidence);
        var letters = evidence.Select((letter, index) => Letter(letter, boxes[index], line)).ToImmutableArray();
        var confidence = letters.IsEmpty ? 0 : Math.Exp(CtcScorer.LogProbability(sight.Posteriors, text) ?? double.NegativeInfinity);
        return new LineReading(line, letters, Probability.From(confidence), sight.Posteriors);
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
