using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using System.Text;

namespace InscriptionLab.Exchange;

/// <summary>The datasheet of a data set, under the headings of T. Gebru and others, "Datasheets for datasets", Communications of the ACM 64 (2021).</summary>
internal static class Datasheet
{
    internal static string Of(IReadOnlyList<DatasetMark> marks, ImmutableArray<int> groups, DatasetSplit split, int letters, DatasetRequest request, DateTimeOffset made)
    {
        var corrected = marks.Count(mark => mark.Line.Correction is not null);
        var photos = marks.Select(mark => mark.Photo.Sha256).Distinct(StringComparer.Ordinal).Count();
        var objects = marks.Select(mark => mark.Shown.Key).Distinct(StringComparer.Ordinal).ToList();
        var programs = string.Join("; ", marks.Select(mark => $"{mark.Photo.Reading!.Versions.Program}, {mark.Photo.Reading.Versions.Model}").Distinct(StringComparer.Ordinal));
        var sheet = new StringBuilder();
        void Section(string heading, FormattableString text) => sheet.Append("## ").Append(heading).Append("\n\n").Append(text.ToString(CultureInfo.InvariantCulture)).Append("\n\n");

        sheet.Append("# Datasheet: engraved lettering of brass instruments\n\n");
        Section("Motivation", $"Built from a catalogue by its owner with InscriptionLab on {ExchangeText.Day(made)}, to compare how marks are spelt and cut. The owner should say here why, and who paid.");
        Section("Composition", $"{marks.Count} lines of lettering with {letters} letters, from {photos} photographs of {objects.Count} objects. `lines.csv` has one row a line, `letters.csv` one row a letter; pictures are grey PNG files, laid flat. {corrected} of {marks.Count} lines were corrected by people; every other transcription is what a program read and may be wrong: letters carry its probability. Letters marked ? are cut but could not be seen.");
        Section("Collection process", $"Lines were found, laid flat and read by: {programs}. Which photographs are in the catalogue was its owner's choice; they are no random sample of anything.");
        Section("Preprocessing, cleaning, labelling", $"Nothing was cleaned or left out. No spelling was corrected by a program. Groups ({groups.Distinct().Count()} of them) join lines whose strokes run alike; they were made by a program, are a starting point, and do not prove one hand.");
        Section("Parts", $"Training {Share(DatasetSplit.Training)}, validation {Share(DatasetSplit.Validation)}, test {Share(DatasetSplit.Test)} (seed {request.Seed}). All lines of one object are in one part, and so are objects of which two photographs look nearly the same, so that a model is never tested on an object it was trained on.");
        Section("Uses", $"For reading engraved letters and comparing marks. Not to certify a piece, nor to accuse anyone who made, owned or sold one.");
        Section("Distribution", $"Licence: {request.Licence ?? "NOT STATED. Do not hand this on before the owner of the photographs has been asked"}.");
        Section("Maintenance", $"Built anew from the catalogue at any time; check sums are in `manifest-sha256.txt` beside the folder `data`.");
        return sheet.ToString();

        string Share(string part)
        {
            var lines = marks.Count(mark => split.Of(mark.Shown.Key) == part);
            return string.Create(CultureInfo.InvariantCulture, $"{lines} lines of {objects.Count(key => split.Of(key) == part)} objects");
        }
    }
}
