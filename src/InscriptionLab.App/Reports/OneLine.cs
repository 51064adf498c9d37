using System;
using System.Linq;

namespace InscriptionLab.App.Reports;

/// <summary>Keeps a sentence on one line whatever names of files it holds: a line feed or another control character in it is shown, not done.</summary>
internal static class OneLine
{
    private const int ControlPictures = 0x2400; // Unicode block Control Pictures: the picture of each of the 32 controls stands in its order.
    private const char PictureOfDelete = '\u2421';

    /// <summary>Between the parts of a message that comes as a list, each part on a line of its own and set in.</summary>
    private const string ListBreak = "\n  ";

    /// <summary>Gives the sentence on one line; the parts of a list follow each other.</summary>
    internal static string Of(string sentence) => string.Concat(sentence.Replace(ListBreak, " ", StringComparison.Ordinal).Select(letter => letter switch
    {
        < ' ' => (char)(ControlPictures + letter),
        '\u007F' => PictureOfDelete,
        >= '\u0080' and <= '\u009F' or '\u2028' or '\u2029' => '\uFFFD',
        _ => letter,
    }));
}
