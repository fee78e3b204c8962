package org.dentary.kit.chain;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** Reads which block labels are of, what codes blocks have, and what people call persons and stations. */
@ApplicationScoped
class BlockChainQueries {
    /** The block that a label was issued in, and the clock of its station. */
    record Home(String code, String block, String timeZone) {}

    /** The codes of a block as one digest. */
    record Codes(String block, Long count, String sha256) {}

    private static final String HOMES = """
            select l.code, cast(k.block as text), s.time_zone
              from label l join kit k on k.code = l.kit_printed join kit_block b on b.id = k.block
              join station s on s.code = b.station
             where l.code = any(:codes)
            """;
    // In printing order, a line each: what labels.csv shows and the event of issuing has the digest of.
    private static final String CODES = """
            select cast(k.block as text), count(*),
                   encode(sha256(convert_to(string_agg(l.code || E'\\n', '' order by k.position,
                       array_position(b.parts, l.part)), 'UTF8')), 'hex')
              from kit k join label l on l.kit_printed = k.code join kit_block b on b.id = k.block
             where k.block = any(cast(:blocks as uuid[])) group by k.block
            """;
    private static final String NAMES = """
            select code, name from person where code = any(:codes)
            union all select code, name from station where code = any(:codes)
            """;
    private static final String LOCK = "select cast(id as text) from kit_block where id = :block for no key update";

    private final EntityManager entities;

    BlockChainQueries(EntityManager entities) {
        this.entities = entities;
    }

    @SuppressWarnings("unchecked")
    List<Home> homes(Collection<String> codes) {
        return entities.createNativeQuery(HOMES, Home.class)
                .setParameter("codes", codes.toArray(String[]::new))
                .getResultList();
    }

    @SuppressWarnings("unchecked")
    Map<String, Codes> codes(Collection<String> blocks) {
        Map<String, Codes> found = new HashMap<>();
        List<Codes> rows = entities.createNativeQuery(CODES, Codes.class)
                .setParameter("blocks", "{" + String.join(",", blocks) + "}")
                .getResultList();
        rows.forEach(codes -> found.put(codes.block(), codes));
        return found;
    }

    @SuppressWarnings("unchecked")
    Map<String, String> names(Collection<String> codes) {
        Map<String, String> names = new HashMap<>();
        List<Object[]> rows = entities.createNativeQuery(NAMES)
                .setParameter("codes", codes.toArray(String[]::new))
                .getResultList();
        rows.forEach(row -> names.put((String) row[0], (String) row[1]));
        return names;
    }

    /** Keeps everybody else from appending to the block's chain until the transaction ends. */
    void lock(UUID block) {
        entities.createNativeQuery(LOCK).setParameter("block", block).getResultList();
    }
}
