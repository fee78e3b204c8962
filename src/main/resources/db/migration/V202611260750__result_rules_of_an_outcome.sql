-- By which rules an outcome was derived, so that other rules find the animals to judge anew and history shows which they were.
alter table outcome_explanation add column rules text not null default '';
comment on column outcome_explanation.rules is 'the rules in words, with their edition; empty for what was derived before they were kept';
