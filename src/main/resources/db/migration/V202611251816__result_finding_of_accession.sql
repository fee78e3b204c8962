-- A laboratory's own number leads to what it said, so that a file of a hundred thousand lines is held against it at once.
create index finding_of_accession on finding (laboratory, accession, item);
