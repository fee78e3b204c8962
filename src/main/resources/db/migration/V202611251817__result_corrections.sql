-- A released word that was replaced by another, and who had the earlier one. A later correction of the same animal stands in its place.
create table correction (
    id bigint generated always as identity primary key,
    kit text not null constraint correction_animal references animal,
    disease text not null constraint correction_disease references disease,
    earlier text not null,                           -- the word that was read before
    word text not null,                              -- the word in its place; PENDING: withdrawn, nothing stands
    cause text not null,                             -- what revised it, as in the line
    line_before bigint not null constraint correction_before references line,
    line_after bigint not null constraint correction_after references line,
    at timestamptz not null,
    constraint correction_once unique (line_after),
    constraint correction_differs check (earlier <> word)
);
create index correction_of on correction (kit, disease, id);
comment on table correction is 'released words replaced by others; never changed';
call make_append_only('correction');
create table correction_recipient (
    id bigint generated always as identity primary key,
    correction bigint not null constraint correction_recipient_of references correction,
    kind text not null constraint correction_recipient_kind check (kind in ('CONTACT', 'AGENCY', 'ROLE', 'CUT')),
    recipient text not null,                         -- incident and position, role, or cut; of a contact the kit
    named text not null,                             -- as the page shows it; names no private person
    had text not null,                               -- the word they had
    had_by text not null,                            -- how they had it, in words
    had_at timestamptz,
    constraint correction_recipient_once unique (correction, kind, recipient)
);
comment on table correction_recipient is 'who had the earlier word when it was replaced; never changed';
call make_append_only('correction_recipient');
create table correction_attempt (
    id uuid primary key,
    recipient bigint not null constraint correction_attempt_to references correction_recipient,
    channel text not null constraint correction_attempt_channel check (channel in ('PHONE', 'LETTER', 'MESSAGE', 'IN_PERSON')),
    result text not null constraint correction_attempt_result check (result in
        ('REACHED', 'SENT', 'NO_ANSWER', 'UNREACHABLE')),
    at timestamptz not null,                         -- when it was tried
    note text,                                       -- no names of private people, no numbers
    by_actor text not null,
    recorded_at timestamptz not null
);
create index correction_attempt_of on correction_attempt (recipient, at);
comment on table correction_attempt is 'tries to tell somebody of a correction; never changed';
call make_append_only('correction_attempt');
