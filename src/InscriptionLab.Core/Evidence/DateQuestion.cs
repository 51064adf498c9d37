using System;
using System.Collections.Immutable;
using System.Linq;

namespace InscriptionLab.Evidence;

/// <summary>Something that could still be looked at, and the years that its answers tell of.</summary>
/// <param name="What">What to look at, in words that end a sentence.</param>
internal abstract record DateQuestion(string What)
{
    /// <summary>Gives the number of years that are to be expected after looking.</summary>
    /// <param name="now">The years as they stand.</param>
    /// <param name="coverage">Share of the weight that the years must hold.</param>
    internal abstract double Expected(YearWeights now, double coverage);

    /// <summary>A question that always has an answer: in each year the answers share 1, in proportion to their weight and to how well the year explains them.</summary>
    internal sealed record Always(string What, ImmutableArray<DateAnswer> Answers) : DateQuestion(What)
    {
        internal override double Expected(YearWeights now, double coverage)
        {
            var likelihoods = Answers.Select(answer => answer.Likelihood()).ToArray();
            for (var year = 0; year < likelihoods[0].Length; year++)
            {
                var sum = likelihoods.Sum(likelihood => likelihood[year]);
                foreach (var likelihood in likelihoods)
                {
                    likelihood[year] /= sum;
                }
            }

            return likelihoods.Select(now.With).Sum(answer => answer.Probability * answer.After.Width(coverage));
        }
    }

    /// <summary>
    /// Something that may be found or not. In each year one of the answers is found with a share that is fixed beforehand, or more seldom where the year explains none;
    /// where nothing is found the years stay as they are, since absence proves nothing.
    /// </summary>
    internal sealed record Sometimes(string What, ImmutableArray<DateAnswer> Answers, double Share) : DateQuestion(What)
    {
        internal override double Expected(YearWeights now, double coverage)
        {
            var likelihoods = Answers.Select(answer => answer.Likelihood()).ToArray();
            for (var year = 0; year < likelihoods[0].Length; year++)
            {
                var sum = Math.Max(1, likelihoods.Sum(likelihood => likelihood[year]));
                foreach (var likelihood in likelihoods)
                {
                    likelihood[year] *= Share / sum;
                }
            }

            var answers = likelihoods.Select(now.With).Where(answer => answer.Probability > 0).ToArray();
            return answers.Sum(answer => answer.Probability * answer.After.Width(coverage)) + ((1 - answers.Sum(answer => answer.Probability)) * now.Width(coverage));
        }
    }

    /// <summary>Something whose answers are as probable as the photo now makes them, whatever the year; with the rest of the probability the years stay as they are.</summary>
    internal sealed record AsSeen(string What, ImmutableArray<DateAnswer> Answers) : DateQuestion(What)
    {
        internal override double Expected(YearWeights now, double coverage) =>
            Answers.Sum(answer => answer.Weight * now.With(answer.Likelihood()).After.Width(coverage)) + ((1 - Answers.Sum(answer => answer.Weight)) * now.Width(coverage));
    }
}
