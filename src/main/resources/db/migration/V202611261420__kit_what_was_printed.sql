-- What a printing of a block took: empty for those before this was kept.
alter table label_print
    add column copies text,                          -- identical labels of each part, such as 'JAW:3 FORM:1'
    add column start_at int,                         -- first label used on the first sheet, from 1
    add column labels int,
    add column sheets int;
-- A kit reported lost or returned by mistake, or found again, is at the station after all.
alter table kit_fate drop constraint kit_fate_fate;
alter table kit_fate add constraint kit_fate_fate check (fate in ('LOST', 'RETURNED', 'LEFT'));
-- The list of blocks, newest first, page by page.
create index kit_block_newest on kit_block (issued_at, id);
