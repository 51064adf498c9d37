using System.Text.Json;
using System.Text.Json.Serialization;

namespace InscriptionLab.Surveys.Queue;

/// <summary>One photo on its way to a worker.</summary>
/// <param name="File">Path; every worker must see the same file there.</param>
/// <param name="Sha256">Hash of its bytes when it was listed.</param>
/// <param name="ObjectKey">The object it shows.</param>
/// <param name="OfferedAs">Name under which the object is offered.</param>
/// <param name="Bytes">Size.</param>
/// <param name="ChangedAt">Time of the last change, in ticks (UTC).</param>
internal sealed record PhotoJob(string File, string Sha256, string ObjectKey, string? OfferedAs, long Bytes, long ChangedAt)
{
    /// <summary>Gives the message's bytes.</summary>
    internal byte[] ToBytes() => JsonSerializer.SerializeToUtf8Bytes(this, PhotoJobJson.Default.PhotoJob);

    /// <summary>Reads a message; null where it is none of ours.</summary>
    internal static PhotoJob? From(System.ReadOnlySpan<byte> bytes)
    {
        try
        {
            return JsonSerializer.Deserialize(bytes, PhotoJobJson.Default.PhotoJob);
        }
        catch (JsonException)
        {
            return null;
        }
    }
}

/// <summary>JSON of the messages.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower)]
[JsonSerializable(typeof(PhotoJob))]
internal sealed partial class PhotoJobJson : JsonSerializerContext;
