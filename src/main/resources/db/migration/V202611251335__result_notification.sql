-- Each try to tell the person who brought an animal what was released of it. Never changed; a wrong entry is replaced by another.
create table notification_attempt (
    id uuid primary key,
    kit text not null constraint notification_attempt_animal references animal,
    disease text not null constraint notification_attempt_disease references disease,
    outcome text not null,                           -- the released outcome that was told, or was to be told
    channel text not null constraint notification_attempt_channel check (channel in ('PHONE', 'LETTER', 'MESSAGE', 'IN_PERSON')),
    result text not null constraint notification_attempt_result check (result in
        ('REACHED', 'SENT', 'NO_ANSWER', 'CALL_BACK_ASKED', 'WRONG_ADDRESS', 'RETURNED', 'NOT_WISHED', 'UNREACHABLE')),
    closes boolean not null,                         -- nothing more is to be done for this outcome
    at timestamptz not null,                         -- when it was tried
    note text,                                       -- no names, no numbers: those stay in the vault
    corrects uuid constraint notification_attempt_corrects references notification_attempt,
    by_actor text not null,
    recorded_at timestamptz not null
);
create index notification_attempt_of on notification_attempt (kit, disease, at desc);
create unique index notification_attempt_corrected_once on notification_attempt (corrects) where corrects is not null;
call make_append_only('notification_attempt');

-- What letters say, edition by edition. An edition that no second person has reviewed is not sent.
create table letter_wording (
    id text generated always as (outcome || '/' || edition) stored,
    outcome text not null constraint letter_wording_outcome check (outcome in
        ('DETECTED', 'NOT_DETECTED', 'INCONCLUSIVE', 'UNSUITABLE', 'NOT_TESTED')),
    edition int not null constraint letter_wording_edition check (edition > 0),
    wording text not null,                           -- paragraphs apart by an empty line; places in braces
    written_by text not null,
    written_at timestamptz not null,
    reviewed_by text constraint letter_wording_second_person check (reviewed_by <> written_by),
    reviewed_at timestamptz,
    primary key (outcome, edition)
);
call keep_history('letter_wording', 'id');
insert into letter_wording (outcome, edition, wording, written_by, written_at) values
    ('DETECTED', 1,
     'You brought us a {species} that died on {diedOn} (kit {kit}{registration}). {disease} was detected in its tissue.

Please call {agency} at {agencyPhone} before you do anything with the meat, the head or the hide. This is what {agency} advises: {agencyAdvice}

If you have questions about how the animal was tested, call us at {resultsPhone}. Questions about a person''s health belong to a clinician or the health department.',
     'service', now()),
    ('NOT_DETECTED', 1,
     'You brought us a {species} that died on {diedOn} (kit {kit}{registration}). {disease} was not detected in the tissue that was tested.

Not detected means that the laboratory did not find the disease in this piece of tissue. An animal infected a short time ago can be missed. The test serves to watch over the herd; it is not an inspection of food.

What to do with the meat is your decision, on the current advice of {agency}: {agencyAdvice} You reach {agency} at {agencyPhone}, and us at {resultsPhone}.',
     'service', now()),
    ('INCONCLUSIVE', 1,
     'You brought us a {species} that died on {diedOn} (kit {kit}{registration}). The laboratory tested its tissue for {disease} and could not come to a result.

That says neither that the disease is there nor that it is not. Please follow the current advice of {agency}: {agencyAdvice} You reach {agency} at {agencyPhone}, and us at {resultsPhone}.',
     'service', now()),
    ('UNSUITABLE', 1,
     'You brought us a {species} that died on {diedOn} (kit {kit}{registration}). Its tissue was not suitable for the test for {disease}, so there is no result.

No result says nothing about the animal. Please follow the current advice of {agency}: {agencyAdvice} You reach {agency} at {agencyPhone}, and us at {resultsPhone}.',
     'service', now()),
    ('NOT_TESTED', 1,
     'You brought us a {species} that died on {diedOn} (kit {kit}{registration}). Its tissue was not tested for {disease}, so there is no result.

No result says nothing about the animal. Please follow the current advice of {agency}: {agencyAdvice} You reach {agency} at {agencyPhone}, and us at {resultsPhone}.',
     'service', now());

-- Look-ups by stub without an account, counted per address and per code; keyed digests only, kept for a day.
create table stub_look_up (
    id bigint generated always as identity primary key,
    address_digest text not null,
    code_digest text not null,
    at timestamptz not null
);
create index stub_look_up_by_address on stub_look_up (address_digest, at);
create index stub_look_up_by_code on stub_look_up (code_digest, at);
create index stub_look_up_by_time on stub_look_up (at);
