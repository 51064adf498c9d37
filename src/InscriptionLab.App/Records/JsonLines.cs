using System;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using InscriptionLab.Outcomes;

namespace InscriptionLab.App.Records;

/// <summary>Writes records as JSON Lines: one object a line, UTF-8, letters as they are and not as escapes.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower)]
[JsonSerializable(typeof(PhotoRecord))]
[JsonSerializable(typeof(SetRecord))]
[JsonSerializable(typeof(MeasureRecord))]
internal sealed partial class JsonLines : JsonSerializerContext
{
    private static readonly JsonLines Readable = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });

    /// <summary>Gives the line of one photo, without a line end.</summary>
    internal static string LineOf(PhotoRecord record) => JsonSerializer.Serialize(record, Readable.PhotoRecord);

    /// <summary>Gives the line of one set of photos, without a line end.</summary>
    internal static string LineOf(SetRecord record) => JsonSerializer.Serialize(record, Readable.SetRecord);

    /// <summary>Gives the line of one measured cell, without a line end.</summary>
    internal static string LineOf(MeasureRecord record) => JsonSerializer.Serialize(record, Readable.MeasureRecord);

    /// <summary>Reads the line of one photo.</summary>
    /// <exception cref="InscriptionLabException">It is no such line.</exception>
    internal static PhotoRecord PhotoOf(string line) => Of(line, Readable.PhotoRecord);

    /// <summary>Reads the line of one set of photos.</summary>
    /// <exception cref="InscriptionLabException">It is no such line.</exception>
    internal static SetRecord SetOf(string line) => Of(line, Readable.SetRecord);

    /// <summary>Reads the line of one measured cell.</summary>
    /// <exception cref="InscriptionLabException">It is no such line.</exception>
    internal static MeasureRecord MeasureOf(string line) => Of(line, Readable.MeasureRecord);

    private static T Of<T>(string line, JsonTypeInfo<T> kind)
    {
        try
        {
            return JsonSerializer.Deserialize(line, kind) ?? throw new JsonException("The line is empty.");
        }
        catch (Exception problem) when (problem is JsonException or InvalidOperationException or NotSupportedException)
        {
            throw new InscriptionLabException("The record is not one that this version of the program writes: examine the photo again.", problem);
        }
    }
}
