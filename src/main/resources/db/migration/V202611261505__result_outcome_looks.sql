-- That a person looked at an outcome that asked for it: it leaves the work list until the outcome reads otherwise.
create table outcome_look (
    id uuid primary key,
    kit text not null constraint outcome_look_animal references animal,
    disease text not null constraint outcome_look_disease references disease,
    since timestamptz not null,                      -- of the outcome as it was looked at: the last finding or other words of it
    review text not null,                            -- what was odd about it
    note text not null,                              -- what was found
    by_actor text not null,
    at timestamptz not null,
    constraint outcome_look_once unique (kit, disease, since)
);
create index outcome_look_newest on outcome_look (at desc, id);
call make_append_only('outcome_look');
grant select, insert on outcome_look to ${service};
create index outcome_explanation_odd on outcome_explanation (kit, disease) where review is not null;
