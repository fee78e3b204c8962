-- For CutsOutliveTest alone: tables grow, are written anew in another order, and their indexes are built anew.
alter table line add column later_note text not null default 'none';
alter table animal add column later_note text not null default 'none';
alter table data_cut_line add column later_position int;
drop index line_of_season;
create index line_of_season on line (season, disease, species, kit) where closed_at is null;
cluster line using line_of_kit;
cluster data_cut_line using data_cut_line_pkey;
analyze line;
