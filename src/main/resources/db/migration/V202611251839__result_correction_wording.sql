-- What stands first in a letter to somebody who was told another word before.
alter table letter_wording drop constraint letter_wording_outcome;
alter table letter_wording add constraint letter_wording_outcome check (outcome in
    ('DETECTED', 'NOT_DETECTED', 'INCONCLUSIVE', 'UNSUITABLE', 'NOT_TESTED', 'CORRECTION'));
insert into letter_wording (outcome, edition, wording, written_by, written_at) values
    ('CORRECTION', 1,
     'This letter puts right what we told you before about the same {species}. We told you then: {disease} {toldBefore}. That no longer holds. Please go by this letter, and by no earlier letter, message or call.',
     'service', now());
