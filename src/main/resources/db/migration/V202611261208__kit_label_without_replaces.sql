-- Never filled: a reprint carries the same code, its trail is in the code's ledger.
alter table label drop column replaces;
