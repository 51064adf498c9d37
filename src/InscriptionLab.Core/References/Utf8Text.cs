using System;
using System.Globalization;
using System.Text;
using InscriptionLab.Outcomes;

namespace InscriptionLab.References;

/// <summary>Text of a file, strictly UTF-8.</summary>
internal static class Utf8Text
{
    /// <summary>Gives the text.</summary>
    /// <param name="file">Name of the file, for messages.</param>
    /// <param name="content">Its bytes, with or without a byte order mark.</param>
    /// <exception cref="InscriptionLabException">The bytes are not UTF-8.</exception>
    internal static string Of(string file, ReadOnlySpan<byte> content)
    {
        if (content is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..])
        {
            throw new InscriptionLabException($"{file}: is UTF-16; save it as UTF-8 (in a spreadsheet: \"CSV UTF-8\").");
        }

        var body = content is [0xEF, 0xBB, 0xBF, ..] ? content[3..] : content;
        try
        {
            return new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(body);
        }
        catch (DecoderFallbackException broken)
        {
            var line = 1 + body[..Math.Clamp(broken.Index, 0, body.Length)].Count((byte)'\n');
            throw new InscriptionLabException(string.Create(CultureInfo.InvariantCulture, $"{file}: is not UTF-8 at line {line}; save it as UTF-8 (in a spreadsheet: \"CSV UTF-8\")."), broken);
        }
    }
}
