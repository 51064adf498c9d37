-- {id}, {long}, {real} and {bytes} stand for the words of the database at hand. Times are milliseconds since 1970-01-01T00:00Z.
CREATE TABLE objects (
    id {id},
    key TEXT NOT NULL UNIQUE,
    title TEXT NULL,
    note TEXT NULL,
    offered_as TEXT NULL,
    created_at {long} NOT NULL,
    trashed_at {long} NULL
);
CREATE TABLE photos (
    id {id},
    object_id {long} NOT NULL REFERENCES objects (id),
    sha256 TEXT NOT NULL UNIQUE,
    file TEXT NOT NULL,
    width {long} NOT NULL,
    height {long} NOT NULL,
    perceptual_hash {long} NULL,
    added_at {long} NOT NULL
);
CREATE INDEX photos_object_id ON photos (object_id);
CREATE TABLE examinations (
    id {id},
    uid TEXT NOT NULL UNIQUE,
    photo_id {long} NOT NULL REFERENCES photos (id),
    kind TEXT NOT NULL,
    made_at {long} NOT NULL,
    added_at {long} NOT NULL,
    program TEXT NOT NULL,
    model TEXT NOT NULL,
    list TEXT NOT NULL,
    list_sha256 TEXT NOT NULL,
    fingerprint TEXT NOT NULL UNIQUE,
    outcome TEXT NOT NULL,
    diameter_px {real} NULL,
    trashed_at {long} NULL,
    record_sha256 TEXT NOT NULL,
    record TEXT NOT NULL
);
CREATE INDEX examinations_photo_id ON examinations (photo_id);
CREATE INDEX examinations_outcome ON examinations (outcome);
CREATE INDEX examinations_made_at ON examinations (made_at);
CREATE TABLE lines (
    id {id},
    examination_id {long} NOT NULL REFERENCES examinations (id),
    position {long} NOT NULL,
    text TEXT NOT NULL,
    folded TEXT NOT NULL,
    corrected TEXT NULL,
    corrected_folded TEXT NULL,
    letters TEXT NOT NULL,
    UNIQUE (examination_id, position)
);
CREATE TABLE marks (
    id {id},
    line_id {long} NOT NULL UNIQUE REFERENCES lines (id),
    embedding {bytes} NULL,
    boxes TEXT NOT NULL,
    picture {bytes} NOT NULL
);
CREATE TABLE nearest_forms (
    id {id},
    examination_id {long} NOT NULL REFERENCES examinations (id),
    rank {long} NOT NULL,
    form TEXT NOT NULL,
    maker TEXT NOT NULL,
    maker_folded TEXT NOT NULL,
    status TEXT NOT NULL,
    differences TEXT NOT NULL,
    UNIQUE (examination_id, rank)
);
CREATE INDEX nearest_forms_maker_folded ON nearest_forms (maker_folded);
CREATE TABLE measurements (
    id {id},
    examination_id {long} NOT NULL REFERENCES examinations (id),
    role TEXT NOT NULL,
    value_mm {real} NOT NULL,
    expanded_mm {real} NOT NULL,
    coverage_factor {real} NOT NULL,
    scale TEXT NOT NULL,
    statement TEXT NOT NULL,
    UNIQUE (examination_id, role)
);
CREATE INDEX measurements_role_value_mm ON measurements (role, value_mm);
CREATE TABLE corrections (
    id {id},
    examination_id {long} NOT NULL REFERENCES examinations (id),
    line {long} NOT NULL,
    was TEXT NOT NULL,
    becomes TEXT NOT NULL,
    by_whom TEXT NOT NULL,
    made_at {long} NOT NULL,
    reason TEXT NOT NULL,
    withdrawn_at {long} NULL
);
CREATE INDEX corrections_examination_id ON corrections (examination_id);
CREATE TABLE changes (
    id {id},
    made_at {long} NOT NULL,
    by_whom TEXT NOT NULL,
    kind TEXT NOT NULL,
    target {long} NOT NULL,
    before TEXT NULL,
    sentence TEXT NOT NULL,
    undone_at {long} NULL
);
CREATE TABLE refusals (
    id {id},
    file TEXT NOT NULL UNIQUE,
    sha256 TEXT NULL,
    sentence TEXT NOT NULL,
    made_at {long} NOT NULL
);
