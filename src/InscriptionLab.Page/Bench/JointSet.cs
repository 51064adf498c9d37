using System.Collections.Immutable;
using InscriptionLab.App.Examining;

namespace InscriptionLab.Page.Bench;

/// <summary>One set of photos read together, with what persons read in the joint reading.</summary>
/// <param name="Key">Changes whenever the program's joint reading does; part of addresses.</param>
/// <param name="Place">Name under which corrections are made: stays while the same photos belong together.</param>
/// <param name="Program">What the program made of the photos.</param>
/// <param name="Examination">The same with letters as persons read them, and the finding over those.</param>
/// <param name="Lines">The lines of the joint reading, with what persons did to them.</param>
/// <param name="SetAside">Corrections that were made on a joint reading that is no longer there.</param>
internal sealed record JointSet(string Key, string Place, SetExamination Program, SetExamination Examination, ImmutableArray<WorkedLine> Lines, ImmutableHashSet<int> SetAside);
