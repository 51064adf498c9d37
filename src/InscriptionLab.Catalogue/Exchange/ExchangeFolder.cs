using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.IO;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using InscriptionLab.Cataloguing;
using InscriptionLab.Files;
using InscriptionLab.Outcomes;

namespace InscriptionLab.Exchange;

/// <summary>Writes a catalogue in the forms that others read.</summary>
/// <param name="catalogue">The catalogue.</param>
/// <param name="clock">The clock.</param>
public sealed class ExchangeFolder(Catalogue catalogue, TimeProvider clock)
{
    private const string Crate = "crate";

    /// <summary>Gets the forms.</summary>
    public static ImmutableArray<string> Formats { get; } = ["epidoc", "linked-art", "lido", "iiif", "page", "coco", "csv", "parquet", "object-id", Crate];

    /// <summary>Writes one form, whole or not at all; into a folder that is there already, over files of the same names.</summary>
    /// <returns>How many objects were written.</returns>
    /// <exception cref="InscriptionLabException">The form is unknown, there is no such object, or the folder of a crate is in use.</exception>
    public async Task<int> WriteAsync(ExchangeRequest request, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!Formats.Contains(request.Format))
        {
            throw new InscriptionLabException($"There is no form {request.Format}; there are {string.Join(", ", Formats)}.");
        }

        if (request.ObjectKey is { } key && ExchangeSource.Count(catalogue, key) == 0)
        {
            throw new InscriptionLabException($"The catalogue has no object {key}; ./lab catalogue find lists what there is.");
        }

        if (request.Format == Crate && WholeFolder.IsInUse(request.Out))
        {
            throw new InscriptionLabException($"{request.Out}: the folder is not empty; name a new one, because a crate lists all that lies in it.");
        }

        using var whole = new WholeFolder(request.Out);
        var written = await (request.Format == Crate ? WriteCrateAsync(request, whole.Beside, cancel) : WriteAsync(request, request.Format, whole.Beside, cancel)).ConfigureAwait(false);
        cancel.ThrowIfCancellationRequested();
        whole.Finish();
        return written;
    }

    private async Task<int> WriteCrateAsync(ExchangeRequest request, string bag, CancellationToken cancel)
    {
        var count = 0;
        foreach (var format in Formats.Where(format => format != Crate))
        {
            var folder = Path.Combine(bag, "data", format);
            Directory.CreateDirectory(folder);
            count = await WriteAsync(request, format, folder, cancel).ConfigureAwait(false);
        }

        BagExport.Pack(bag, "Catalogue of engraved lettering", "Lettering of brass instruments as read from photographs, with probabilities, measurements and corrections", request.Licence, clock.GetUtcNow());
        return count;
    }

    private async Task<int> WriteAsync(ExchangeRequest request, string format, string folder, CancellationToken cancel)
    {
        IEnumerable<ExchangeObject> Objects() => ExchangeSource.Objects(catalogue, request.ObjectKey);
        switch (format)
        {
            case "coco":
                Write(folder, "letters.json", CocoExport.Of(Objects(), request.Licence));
                break;
            case "csv":
                TableExport.WriteCsv(folder, Objects());
                break;
            case "parquet":
                await TableExport.WriteParquetAsync(folder, Objects(), cancel).ConfigureAwait(false);
                break;
            default:
                foreach (var shown in Objects())
                {
                    cancel.ThrowIfCancellationRequested();
                    foreach (var (name, text) in FilesOf(request, format, shown))
                    {
                        Write(folder, name, text);
                    }
                }

                break;
        }

        return ExchangeSource.Count(catalogue, request.ObjectKey);
    }

    private static IEnumerable<(string Name, string Text)> FilesOf(ExchangeRequest request, string format, ExchangeObject shown)
    {
        var name = ExchangeText.FileName(shown.Key);
        return format switch
        {
            "epidoc" => [(name + ".xml", EpiDocExport.Of(shown))],
            "linked-art" => [(name + ".json", new LinkedArtExport(request.BaseAddress).Of(shown))],
            "lido" => [(name + ".xml", LidoExport.Of(shown))],
            "iiif" => [(name + ".json", new IiifExport(request.BaseAddress).Of(shown))],
            "object-id" => [(name + ".html", ObjectIdPage.Of(shown))],
            _ => shown.Photos.Where(photo => photo.Reading is not null).Select(photo => (photo.Sha256 + ".xml", PageXmlExport.Of(photo))),
        };
    }

    private static void Write(string folder, string name, string text) => WholeFile.Write(Path.Combine(folder, name), text);
}
