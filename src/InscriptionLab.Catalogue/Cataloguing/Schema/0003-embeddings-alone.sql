-- Likeness asks for every embedding at once. In a file a row's picture and record lie beside what is asked for, so that the embeddings have an index that
-- holds them; PostgreSQL keeps pictures and records outside the row by itself (TOAST), and its indexes take no more than a third of a page.
-- {file only} marks what PostgreSQL does without.
{file only}CREATE INDEX marks_line_id_embedding ON marks (line_id, embedding) WHERE embedding IS NOT NULL;
-- What lies in the trash is little beside the whole, and steps taken back are few beside all.
CREATE INDEX examinations_trashed_at ON examinations (trashed_at) WHERE trashed_at IS NOT NULL;
CREATE INDEX objects_trashed_at ON objects (trashed_at) WHERE trashed_at IS NOT NULL;
CREATE INDEX changes_undone_at ON changes (undone_at) WHERE undone_at IS NOT NULL;
