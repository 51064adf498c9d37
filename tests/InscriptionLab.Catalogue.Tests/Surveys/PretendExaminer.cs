using System;
using System.Collections.Concurrent;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text.Json;
using System.Threading;
using InscriptionLab.Outcomes;
using InscriptionLab.Surveys;

namespace InscriptionLab.Catalogue.Tests.Surveys;

/// <summary>Takes a text file for a photo: its first word is the finding, the rest the lettering. Counts what it was given.</summary>
internal sealed class PretendExaminer(ConcurrentBag<string> examined, Action<int>? before = null, Func<bool>? hasTime = null) : IPhotoExaminer
{
    public PhotoResult Examine(SurveyFile file, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        before?.Invoke(examined.Count);
        cancel.ThrowIfCancellationRequested();
        examined.Add(file.Path);
        var words = File.ReadAllText(file.Path).Split(' ', 2);
        return words[0] switch
        {
            "damaged" => throw new InscriptionLabException($"{file.Path}: the picture is cut off or damaged; copy or download the photo again."),
            "slow" when hasTime?.Invoke() == false => throw new InscriptionLabException($"{file.Path}: the photo took too long.") { MayPass = true },
            "breaks" => throw new KeyNotFoundException("a fault of the program"),
            _ => new PhotoResult(
                words[0],
                words[1],
                "Tobias Brockwell",
                "Brockwell",
                "attested",
                ["The focal length was assumed."],
                0x9E3779B97F4A7C15UL * (ulong)words[1].Aggregate(17, (sum, letter) => (sum * 31) + letter),
                JsonSerializer.Serialize(new { file = file.Path, text = words[1] }),
                [1, 2, 3]),
        };
    }

    public void Dispose()
    {
    }
}
