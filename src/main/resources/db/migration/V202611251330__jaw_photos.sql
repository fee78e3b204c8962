-- A photograph of an animal's jaw. What it shows lies apart, so that no history keeps what was erased.
create table jaw_photo (
    id uuid primary key,
    kit text not null constraint jaw_photo_animal references animal,
    reading uuid constraint jaw_photo_reading references jaw_reading,   -- null: of the animal, for any reader
    digest text not null,                            -- SHA-256 of size and pixels as kept, hex: one photo, one animal
    width int not null,                              -- pixels, as kept
    height int not null,
    bytes int not null,                              -- of the large copy
    added_by text not null,
    added_at timestamptz not null,
    erased_by text,                                  -- null: still there
    erased_at timestamptz,
    erased_reason text,
    constraint jaw_photo_erased check ((erased_at is null) = (erased_by is null) and (erased_at is null) = (erased_reason is null))
);
create unique index jaw_photo_once on jaw_photo (digest) where erased_at is null;
create index jaw_photo_of on jaw_photo (kit, added_at, id);
call keep_history('jaw_photo', 'id');
comment on table jaw_photo is 'Photographs of jaws without their pixels; an erased one keeps its row';

-- No history and no trigger: deleting a row erases the picture.
create table jaw_photo_content (
    photo uuid primary key constraint jaw_photo_content_of references jaw_photo,
    large bytea not null,                            -- JPEG without metadata, longest side at most 2560 pixels
    small bytea not null                             -- JPEG without metadata, longest side at most 400 pixels
);
comment on table jaw_photo_content is 'What the photographs show; outside history, erasable';
