using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace InscriptionLab.Cataloguing;

/// <summary>JSON of the catalogue's own small values.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower)]
[JsonSerializable(typeof(ImmutableArray<ImmutableArray<double>>))]
internal sealed partial class CatalogueJson : JsonSerializerContext;
