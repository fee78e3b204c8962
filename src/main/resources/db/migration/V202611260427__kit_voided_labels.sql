-- Voided labels are few: a block's are counted without reading the others.
create index label_voided on label (kit_printed) where voided_at is not null;
