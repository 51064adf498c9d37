using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;

namespace InscriptionLab.Assess.Sharpness;

/// <summary>Whether the sharpness of edges tells more about a letter than its probability already does.</summary>
internal static class SharpnessReport
{
    private const int Steps = 60;

    /// <summary>Probabilities nearer than this to 0 or 1 are counted as this far away.</summary>
    private const double Nearest = 0.001;

    /// <summary>Pull toward no change, so that a few letters do not decide (common practice).</summary>
    private const double Ridge = 1;

    private static readonly double[] Borders = [0.08, 0.12, 0.17, 0.23];

    internal static string Of(IReadOnlyList<SharpLetter> letters)
    {
        var text = new StringBuilder("| width of edges over the letters' height | letters | mean probability stated | right |\n|---|---|---|---|\n");
        foreach (var bin in letters.GroupBy(letter => Borders.Count(border => letter.Width >= border)).OrderBy(bin => bin.Key))
        {
            var name = bin.Key == 0 ? $"below {Borders[0]}" : bin.Key == Borders.Length ? $"from {Borders[^1]}" : $"{Borders[bin.Key - 1]} to {Borders[bin.Key]}";
            text.Append(CultureInfo.InvariantCulture, $"| {name} | {bin.Count()} | {bin.Average(letter => letter.Stated):0.000} | {bin.Average(letter => letter.Right ? 1.0 : 0):0.000} |\n");
        }

        Losses(text, "letters", letters);
        if (letters.Where(letter => letter.Outlines is not null).ToList() is { Count: > 0 } outlined)
        {
            Losses(text, "letters of tubes with measured outlines", outlined, ("by it and the rise of the outlines", letter => [1, Logit(letter), letter.Outlines!.Value * 10]));
        }

        return text.ToString();
    }

    private static void Losses(StringBuilder text, string name, IReadOnlyList<SharpLetter> letters, params (string Name, Func<SharpLetter, double[]> Terms)[] more)
    {
        text.Append(CultureInfo.InvariantCulture, $"\n| probability of a letter, {letters.Count} {name} of {letters.DistinctBy(letter => letter.Photo).Count()} photos | loss (mean negative log-likelihood), each photo judged by what the others teach |\n|---|---|\n");
        foreach (var (way, terms) in new (string, Func<SharpLetter, double[]>)[]
        {
            ("by the probability stated", letter => [1, Logit(letter)]),
            ("by it and the width of edges", letter => [1, Logit(letter), letter.Width * 10]),
        }.Concat(more))
        {
            text.Append(CultureInfo.InvariantCulture, $"| {way}, fitted | {Crossed(letters, terms):0.0000} |\n");
        }

        text.Append(CultureInfo.InvariantCulture, $"| as stated | {letters.Average(letter => Loss(letter, Math.Clamp(letter.Stated, Nearest, 1 - Nearest))):0.0000} |\n");
    }

    private static double Logit(SharpLetter letter)
    {
        var p = Math.Clamp(letter.Stated, Nearest, 1 - Nearest);
        return Math.Log(p / (1 - p));
    }

    private static double Loss(SharpLetter letter, double p) => -Math.Log(Math.Max(Nearest / 10, letter.Right ? p : 1 - p));

    /// <summary>Leaves out each photo with all its blurred copies in turn.</summary>
    private static double Crossed(IReadOnlyList<SharpLetter> letters, Func<SharpLetter, double[]> terms) => letters.GroupBy(letter => letter.Photo).SelectMany(left =>
    {
        var weights = Fit([.. letters.Where(letter => letter.Photo != left.Key)], terms);
        return left.Select(letter => Loss(letter, Chance(terms(letter), weights)));
    }).Average();

    private static double Chance(double[] terms, double[] weights) => 1 / (1 + Math.Exp(-terms.Zip(weights, (term, weight) => term * weight).Sum()));

    /// <summary>Logistic regression by gradient steps of Newton's length on each term alone, toward the probability as stated.</summary>
    private static double[] Fit(List<SharpLetter> letters, Func<SharpLetter, double[]> terms)
    {
        var rows = letters.ConvertAll(letter => (Terms: terms(letter), Right: letter.Right ? 1.0 : 0));
        var start = new double[rows[0].Terms.Length];
        start[1] = 1;
        var weights = (double[])start.Clone();
        for (var step = 0; step < Steps * weights.Length; step++)
        {
            var i = step % weights.Length;
            var (gradient, curve) = (-Ridge * (weights[i] - start[i]), Ridge);
            foreach (var (values, right) in rows)
            {
                var chance = Chance(values, weights);
                (gradient, curve) = (gradient + (values[i] * (right - chance)), curve + (values[i] * values[i] * chance * (1 - chance)));
            }

            weights[i] += gradient / curve;
        }

        return weights;
    }
}
