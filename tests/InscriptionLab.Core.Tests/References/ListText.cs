using System.Linq;
using System.Text;
using InscriptionLab.Outcomes;
using InscriptionLab.References;
using Xunit;

namespace InscriptionLab.Core.Tests.References;

/// <summary>Reads lists that a test writes out in full.</summary>
internal static class ListText
{
    internal static LoadedReferences Csv(params string[] lines) => Read("reference.csv", string.Join('\n', lines));

    internal static LoadedReferences Json(string text) => Read("reference.json", text);

    internal static LoadedReferences Read(string file, string text) => new ReferenceListReader().Read(file, Encoding.UTF8.GetBytes(text));

    internal static string CsvError(params string[] lines) => Assert.Throws<InscriptionLabException>(() => Csv(lines)).Message;

    internal static string JsonError(string text) => Assert.Throws<InscriptionLabException>(() => Json(text)).Message;

    internal static string[] Forms(this LoadedReferences loaded) => [.. loaded.List.Forms.Select(form => form.Form)];
}
