-- A detection whose unit is unknown may be the first of any unit: it opens an incident without one, until the unit is found.
alter table incident alter column unit drop not null;
comment on column incident.unit is 'null: unknown, and to be found';
drop index incident_open_once;
create unique index incident_open_once on incident (disease, coalesce(unit, '')) where state = 'OPEN';
