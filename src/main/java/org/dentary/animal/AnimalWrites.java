package org.dentary.animal;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;

/** Writes beside the animal's own row: its identifiers, its links, and why the present transaction changes things. */
@ApplicationScoped
class AnimalWrites {
    private static final String REASON = "select set_config('dentary.reason', :reason, true)";
    private static final String FORGET = "delete from animal_identifier where kit = :kit";
    private static final String IDENTIFY = """
            insert into animal_identifier (kit, type, issuer, value)
            select :kit, t.type, t.issuer, t.value
              from unnest(cast(:types as text[]), cast(:issuers as text[]), cast(:values as text[]))
                   as t(type, issuer, value)
            """;
    private static final String LINK = """
            insert into animal_link (kit, same_as, reason, evidence, by_actor, at)
            values (:kit, cast(:sameAs as text), :reason, cast(:evidence as text), :actor, :now)
            """;
    private static final String POINT = """
            update animal set same_as = cast(:sameAs as text), version = version + 1 where kit = :kit
            """;

    private final EntityManager entities;

    AnimalWrites(EntityManager entities) {
        this.entities = entities;
    }

    /** Gives the history rows of this transaction their reason; null for none. */
    void reason(String reason) {
        entities.createNativeQuery(REASON)
                .setParameter("reason", reason == null ? "" : reason)
                .getSingleResult();
    }

    void identify(String kit, List<Identifier> identifiers, boolean anew) {
        if (anew) {
            entities.createNativeQuery(FORGET).setParameter("kit", kit).executeUpdate();
        }
        if (!identifiers.isEmpty()) {
            entities.createNativeQuery(IDENTIFY)
                    .setParameter("kit", kit)
                    .setParameter(
                            "types", identifiers.stream().map(Identifier::type).toArray(String[]::new))
                    .setParameter(
                            "issuers",
                            identifiers.stream()
                                    .map(identifier -> identifier.issuer() == null ? "" : identifier.issuer())
                                    .toArray(String[]::new))
                    .setParameter(
                            "values",
                            identifiers.stream().map(Identifier::value).toArray(String[]::new))
                    .executeUpdate();
        }
    }

    /** Adds a row to the links and lets the animal follow it; {@code sameAs} null undoes. */
    void link(String kit, String sameAs, String reason, String evidence, String actor, Instant now) {
        entities.createNativeQuery(LINK)
                .setParameter("kit", kit)
                .setParameter("sameAs", sameAs)
                .setParameter("reason", reason)
                .setParameter("evidence", evidence)
                .setParameter("actor", actor)
                .setParameter("now", now)
                .executeUpdate();
        entities.createNativeQuery(POINT)
                .setParameter("sameAs", sameAs)
                .setParameter("kit", kit)
                .executeUpdate();
    }
}
