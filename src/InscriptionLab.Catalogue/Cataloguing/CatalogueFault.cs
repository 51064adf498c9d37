using System;
using System.Data.Common;
using Microsoft.Data.Sqlite;

namespace InscriptionLab.Cataloguing;

/// <summary>Puts what a database refuses into one sentence. What was not finished is not there; what was acknowledged is.</summary>
public static class CatalogueFault
{
    // Result codes of SQLite (sqlite.org/rescode.html).
    private const int Busy = 5;
    private const int Locked = 6;
    private const int ReadOnly = 8;
    private const int InputOutput = 10;
    private const int Corrupt = 11;
    private const int Full = 13;
    private const int CannotOpen = 14;
    private const int NoDatabase = 26;

    /// <summary>Gives the sentence; null where the fault is none of a database.</summary>
    public static string? Of(Exception problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        return problem.GetBaseException() switch
        {
            SqliteException file => Of(file),
            DbException server => $"The catalogue did not take it ({server.Message.ReplaceLineEndings(" ").TrimEnd('.')}); nothing of this step is kept, so see to the database and do it again.",
            _ => null,
        };
    }

    private static string Of(SqliteException problem) => problem.SqliteErrorCode switch
    {
        Full => "The disk is full, so the catalogue took nothing of this step; make room and do it again.",
        Busy or Locked => "Another program holds the catalogue, so nothing of this step is kept; wait until it is done and do it again.",
        ReadOnly or CannotOpen => "The catalogue may not be written where it lies, so nothing of this step is kept; see that you may write the file and its folder.",
        InputOutput => "The disk of the catalogue did not take what was written (it may be full), so nothing of this step is kept; see to the disk and do it again.",
        Corrupt or NoDatabase => "The catalogue's file is damaged; go on with a copy, or import what was exported last.",
        _ => $"The catalogue did not take it ({problem.Message.ReplaceLineEndings(" ").TrimEnd('.')}); nothing of this step is kept.",
    };
}
