using System.CommandLine;
using System.Globalization;

namespace InscriptionLab.App.Cli;

/// <summary>Options that take a count.</summary>
internal static class Counts
{
    /// <summary>Makes an option that takes a whole number from 1.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="otherwise">Its value where it is not given.</param>
    internal static Option<int> Option(string name, int otherwise)
    {
        var option = new Option<int>(name) { DefaultValueFactory = _ => otherwise };
        option.Validators.Add(result =>
        {
            if (result.Tokens is [var token] && int.TryParse(token.Value, NumberStyles.Integer, CultureInfo.InvariantCulture, out var count) && count < 1)
            {
                result.AddError($"{name} needs a whole number from 1, not {token.Value}");
            }
        });
        return option;
    }
}
