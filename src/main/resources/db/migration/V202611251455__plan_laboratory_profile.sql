-- What else a laboratory's acceptance asks of a piece.
alter table laboratory_acceptance add column max_days_kept int;          -- in the present preservation
alter table laboratory_acceptance add column minimum_age text;           -- FAWN, YEARLING or ADULT; null: any
alter table laboratory_acceptance add column unknown_age_stops boolean not null default false;
alter table laboratory_acceptance add column container text;             -- in the laboratory's own words

-- When and how a laboratory takes parcels, from a day on. It warns and never refuses.
create table laboratory_profile (
    id bigint generated always as identity primary key,
    laboratory text not null constraint laboratory_profile_laboratory references laboratory,
    in_force_from date not null,
    in_force_to date,
    receives_on text[] not null,                     -- MON, TUE ... SUN
    cut_off text,                                    -- HH:MM on the laboratory's clock; null: all day
    temperature text,                                -- in its own words, such as: chilled, 1 to 8 degrees Celsius
    pieces text,                                     -- how many and how packed
    paperwork text,                                  -- what must come with the parcel
    handling text,                                   -- its handling words for who packs
    constraint laboratory_profile_once unique (laboratory, in_force_from)
);
call keep_history('laboratory_profile', 'id');
create table laboratory_closure (
    laboratory text not null constraint laboratory_closure_laboratory references laboratory,
    day date not null,
    name text not null,
    constraint laboratory_closure_once primary key (laboratory, day)
);
comment on table laboratory_closure is 'days on which a laboratory takes nothing: holidays, moving, inspections';
