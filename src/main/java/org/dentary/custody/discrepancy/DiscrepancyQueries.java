package org.dentary.custody.discrepancy;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.Query;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.dentary.custody.chain.Answers.Mark;
import org.dentary.custody.evidence.ErasedText;
import org.dentary.custody.evidence.EvidenceView;

/** Reads and writes discrepancies. */
@ApplicationScoped
class DiscrepancyQueries {
    private static final String COLUMNS = """
            select cast(d.id as text) as id, d.code, d.kind, d.owner, d.due_on, d.evidence, d.outcome, d.subject,
                   d.opened_by, d.opened_at, d.closed_at, d.version, coalesce(owner.name, d.owner) as owner_name,
                   coalesce(opener.name, d.opened_by) as opener_name
              from discrepancy d
              left join person owner on owner.code = d.owner
              left join person opener on opener.code = d.opened_by
            """;
    private static final String ONE = COLUMNS + " where d.id = cast(:id as uuid)";
    private static final String LOCK = "select version from discrepancy where id = cast(:id as uuid) for update";
    private static final String LIST = COLUMNS + """
             where (cast(:open as boolean) is null or (d.closed_at is null) = :open)
               and (cast(:owner as text) is null or d.owner = :owner)
               and (cast(:of as text) is null or d.owner = :of or d.opened_by = :of)
               and (cast(:subject as text) is null or d.subject = :subject)
               and (cast(:code as text) is null or d.code = :code)
               and (cast(:after as date) is null
                    or (d.due_on, cast(d.id as text)) > (cast(:after as date), cast(:afterId as text)))
             order by d.due_on, cast(d.id as text) limit :most
            """;
    private static final String COUNT_OPEN = """
            select count(*) from discrepancy d
             where d.closed_at is null and (cast(:of as text) is null or d.owner = :of or d.opened_by = :of)
            """;
    private static final String OF_CODES = COLUMNS + " where d.code = any(:codes) order by d.code, d.opened_at, d.id";
    private static final String INSERT = """
            insert into discrepancy (id, code, kind, owner, due_on, evidence, subject, opened_by, opened_at)
            select cast(r.id as uuid), r.code, :kind, :owner, cast(:dueOn as date), :evidence, :subject, :by, :at
              from unnest(cast(:ids as text[]), cast(:codes as text[])) r(id, code)
            """;
    private static final String CHANGE = """
            update discrepancy set code = :code, kind = :kind, owner = :owner, due_on = cast(:dueOn as date),
                evidence = :evidence, outcome = :outcome, closed_at = :closedAt, version = version + 1
             where id = cast(:id as uuid)
            """;

    private static final String SHOW = """
            insert into discrepancy_evidence (discrepancy, evidence)
            select cast(d.id as uuid), cast(e.id as uuid)
              from unnest(cast(:discrepancies as text[])) d(id) cross join unnest(cast(:evidence as text[])) e(id)
            on conflict do nothing
            """;

    private final EntityManager entities;

    DiscrepancyQueries(EntityManager entities) {
        this.entities = entities;
    }

    /** A row of {@code discrepancy}. */
    record DiscrepancyRow(
            String id,
            String code,
            String kind,
            String owner,
            LocalDate dueOn,
            String evidence,
            String outcome,
            String subject,
            String openedBy,
            Instant openedAt,
            Instant closedAt,
            Integer version,
            String ownerName,
            String openedByName) {
        DiscrepancyView view(LocalDate today, List<EvidenceView> photos, ErasedText erased) {
            return new DiscrepancyView(
                    id,
                    code,
                    kind,
                    owner,
                    ownerName,
                    dueOn,
                    evidence,
                    evidence == null ? erased : null,
                    outcome,
                    subject,
                    openedBy,
                    openedByName,
                    openedAt,
                    closedAt,
                    closedAt == null && dueOn.isBefore(today),
                    photos,
                    version);
        }
    }

    Optional<DiscrepancyRow> find(String id) {
        return rows(entities.createNativeQuery(ONE, DiscrepancyRow.class).setParameter("id", id)).stream()
                .findFirst();
    }

    Optional<DiscrepancyRow> lock(String id) {
        entities.createNativeQuery(LOCK).setParameter("id", id).getResultList();
        return find(id);
    }

    /** What a list asks for; null asks for all. */
    record Filter(Boolean open, String owner, String of, String subject, String code, Mark after) {}

    /** The next due first, after a known one. */
    List<DiscrepancyRow> list(Filter filter, int most) {
        return rows(entities.createNativeQuery(LIST, DiscrepancyRow.class)
                .setParameter("open", filter.open())
                .setParameter("owner", filter.owner())
                .setParameter("of", filter.of())
                .setParameter("subject", filter.subject())
                .setParameter("code", filter.code())
                .setParameter(
                        "after", filter.after() == null ? null : filter.after().value())
                .setParameter(
                        "afterId",
                        filter.after() == null ? null : filter.after().id())
                .setParameter("most", most));
    }

    /** @param of whose alone; null for everybody's */
    long countOpen(String of) {
        return ((Number) entities.createNativeQuery(COUNT_OPEN)
                        .setParameter("of", of)
                        .getSingleResult())
                .longValue();
    }

    /** All about some codes, each code's oldest first. */
    List<DiscrepancyRow> ofCodes(Collection<String> codes) {
        return rows(entities.createNativeQuery(OF_CODES, DiscrepancyRow.class)
                .setParameter("codes", codes.toArray(String[]::new)));
    }

    /** One per code; the row stands for all, save id and code. */
    void insert(List<String> ids, Collection<String> codes, DiscrepancyRow like) {
        entities.createNativeQuery(INSERT)
                .setParameter("ids", ids.toArray(String[]::new))
                .setParameter("codes", codes.toArray(String[]::new))
                .setParameter("kind", like.kind())
                .setParameter("owner", like.owner())
                .setParameter("dueOn", like.dueOn().toString())
                .setParameter("evidence", like.evidence())
                .setParameter("subject", like.subject())
                .setParameter("by", like.openedBy())
                .setParameter("at", like.openedAt())
                .executeUpdate();
    }

    void change(DiscrepancyRow row) {
        entities.createNativeQuery(CHANGE)
                .setParameter("id", row.id())
                .setParameter("code", row.code())
                .setParameter("kind", row.kind())
                .setParameter("owner", row.owner())
                .setParameter("dueOn", row.dueOn().toString())
                .setParameter("evidence", row.evidence())
                .setParameter("outcome", row.outcome())
                .setParameter("closedAt", row.closedAt())
                .executeUpdate();
    }

    void show(Collection<UUID> discrepancies, Collection<UUID> evidence) {
        entities.createNativeQuery(SHOW)
                .setParameter("discrepancies", texts(discrepancies))
                .setParameter("evidence", texts(evidence))
                .executeUpdate();
    }

    private static String[] texts(Collection<UUID> ids) {
        return ids.stream().map(UUID::toString).toArray(String[]::new);
    }

    @SuppressWarnings("unchecked")
    private static List<DiscrepancyRow> rows(Query query) {
        return (List<DiscrepancyRow>) query.getResultList();
    }
}
