-- Where a box stands follows from who has it (custody_head); a second account of it could only differ.
alter table box drop column state;
