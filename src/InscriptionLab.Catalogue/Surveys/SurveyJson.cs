using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace InscriptionLab.Surveys;

/// <summary>JSON of a survey's journal and summary.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingDefault)]
[JsonSerializable(typeof(JournalEntry))]
[JsonSerializable(typeof(JsonElement))]
internal sealed partial class SurveyJson : JsonSerializerContext
{
    /// <summary>Gets the context that writes letters as they are.</summary>
    internal static SurveyJson Readable { get; } = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingDefault,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });
}
