-- How many lines a cut holds never changes: counted once, as every list of cuts tells it and would go over all of them again.
alter table data_cut add column lines bigint not null default 0;
update data_cut c set lines = (select count(*) from data_cut_line l where l.cut = c.id);
