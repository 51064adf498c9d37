using System;
using System.Threading;
using InscriptionLab.Outcomes;

namespace InscriptionLab.Surveys;

/// <summary>Examines the photos of one worker, one after the other. Each worker has its own.</summary>
public interface IPhotoExaminer : IDisposable
{
    /// <summary>Examines one photo. The examiner keeps nothing itself.</summary>
    /// <param name="file">The file.</param>
    /// <param name="cancel">Stops between two stages.</param>
    /// <exception cref="InscriptionLabException">The file cannot be used; the message says why in one sentence.</exception>
    PhotoResult Examine(SurveyFile file, CancellationToken cancel);
}
