using System.Collections.Generic;
using System.Linq;
using System.Xml.Linq;

namespace InscriptionLab.Exchange;

/// <summary>One object as a LIDO 1.1 record: lettering as inscriptions, measurements with their uncertainty as qualifier.</summary>
internal static class LidoExport
{
    private static readonly XNamespace Lido = "http://www.lido-schema.org";
    private const string Local = "http://terminology.lido-schema.org/lido00099";

    internal static string Of(ExchangeObject shown) => ExchangeText.Xml(new XElement(
        Lido + "lido",
        new XAttribute(XNamespace.Xmlns + "lido", Lido.NamespaceName),
        new XElement(Lido + "lidoRecID", new XAttribute(Lido + "type", Local), ExchangeText.Clean(shown.Key)),
        new XElement(
            Lido + "descriptiveMetadata",
            new XAttribute(XNamespace.Xml + "lang", "en"),
            new XElement(Lido + "objectClassificationWrap", new XElement(Lido + "objectWorkTypeWrap", new XElement(Lido + "objectWorkType", Term("part of an optical instrument")))),
            new XElement(
                Lido + "objectIdentificationWrap",
                new XElement(Lido + "titleWrap", new XElement(Lido + "titleSet", new XElement(Lido + "appellationValue", ExchangeText.Clean(shown.ShownTitle)))),
                new XElement(Lido + "inscriptionsWrap", shown.Photos.Where(photo => photo.Reading is not null).SelectMany(photo => photo.Reading!.Lines.Select(line => Inscription(photo, line)))),
                shown.Observations.IsEmpty ? null : new XElement(Lido + "objectDescriptionWrap", shown.Observations.Select(Observed)),
                new XElement(Lido + "objectMeasurementsWrap", shown.Measurements.Select(item => Measurement(item.Measured))))),
        new XElement(
            Lido + "administrativeMetadata",
            new XAttribute(XNamespace.Xml + "lang", "en"),
            new XElement(
                Lido + "recordWrap",
                new XElement(Lido + "recordID", new XAttribute(Lido + "type", Local), ExchangeText.Clean(shown.Key)),
                new XElement(Lido + "recordType", Term("single object")),
                new XElement(Lido + "recordSource", new XElement(Lido + "legalBodyName", new XElement(Lido + "appellationValue", "InscriptionLab, from photographs")))))));

    private static XElement Inscription(ExchangePhoto photo, ExchangeLine line) => new(
        Lido + "inscriptions",
        new XElement(Lido + "inscriptionTranscription", ExchangeText.Clean(line.Read)),
        Notes(photo, line).Select(note => new XElement(Lido + "inscriptionDescription", new XElement(Lido + "descriptiveNoteValue", ExchangeText.Clean(note)))));

    private static IEnumerable<string> Notes(ExchangePhoto photo, ExchangeLine line)
    {
        yield return $"Line {line.Position + 1} as a program read it in photograph {photo.Sha256}; ? stands for a letter that is cut but cannot be seen.";
        if (line.Correction is { } correction)
        {
            yield return $"{correction.By} ({ExchangeText.Day(correction.At)}) reads \"{correction.Text}\". {correction.Reason}".TrimEnd();
        }
    }

    /// <summary>What a person saw on the object; the source is who saw it.</summary>
    private static XElement Observed(Cataloguing.ObservationEntry seen) => new(
        Lido + "objectDescriptionSet",
        new XElement(Lido + "descriptiveNoteValue", ExchangeText.Clean(ObservationWords.Whole(seen))),
        new XElement(Lido + "sourceDescriptiveNote", ExchangeText.Clean(seen.By)));

    private static XElement Measurement(Cataloguing.MeasurementEntry measured) => new(
        Lido + "objectMeasurementsSet",
        new XElement(Lido + "displayObjectMeasurements", ExchangeText.Clean(measured.Statement)),
        new XElement(
            Lido + "objectMeasurements",
            new XElement(
                Lido + "measurementsSet",
                new XElement(Lido + "measurementType", Term("diameter")),
                new XElement(Lido + "measurementUnit", Term("mm")),
                new XElement(Lido + "measurementValue", ExchangeText.Number(measured.ValueMm))),
            new XElement(Lido + "extentMeasurements", Term($"lens cell, {measured.Role}")),
            new XElement(Lido + "qualifierMeasurements", Term($"U = {ExchangeText.Number(measured.ExpandedMm)} mm, k = {ExchangeText.Number(measured.CoverageFactor)}"))));

    private static XElement Term(string text) => new(Lido + "term", text);
}
