-- The sealed hash beside the event's id: trees and proofs need no look at the events, and an event that was lost or
-- changed against the rules can still be named.
alter table checkpoint_leaf add column hash text not null;   -- SHA-256 of the event, hex; the leaf's data
