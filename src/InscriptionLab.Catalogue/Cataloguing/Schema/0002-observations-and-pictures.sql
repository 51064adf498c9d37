-- What persons saw on an object itself lies as a layer beside its photos: rows are added and withdrawn, never changed.
CREATE TABLE observations (
    id {id},
    object_id {long} NOT NULL REFERENCES objects (id),
    feature TEXT NOT NULL,
    answer TEXT NOT NULL,
    from_year {long} NULL,
    to_year {long} NULL,
    source TEXT NOT NULL,
    by_whom TEXT NOT NULL,
    made_at {long} NOT NULL,
    withdrawn_at {long} NULL
);
CREATE INDEX observations_object_id ON observations (object_id);
CREATE INDEX observations_feature_answer ON observations (feature, answer);
-- Pictures of photos read together: the joined strip, the grooves, the form of the surface.
CREATE TABLE pictures (
    id {id},
    examination_id {long} NOT NULL REFERENCES examinations (id),
    name TEXT NOT NULL,
    media_type TEXT NOT NULL,
    width {long} NOT NULL,
    height {long} NOT NULL,
    picture {bytes} NOT NULL,
    UNIQUE (examination_id, name)
);
