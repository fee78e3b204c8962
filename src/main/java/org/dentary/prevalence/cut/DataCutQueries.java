package org.dentary.prevalence.cut;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.dentary.platform.problem.NotFound;

/** Cuts: each made by one statement. */
@ApplicationScoped
public class DataCutQueries {
    private static final String SELECT = """
            select c.id::text, c.season, c.name, c.made_by, c.made_at, c.superseded_reason, c.version,
                   c.lines, c.context
              from data_cut c
            """;
    private static final String INSERT =
            "insert into data_cut (id, season, name, made_by, made_at) values (:id, :season, :name, :by, :at)";
    private static final String FILL =
            "insert into data_cut_line (cut, line) select :id, id from line where closed_at is null and season = :season";
    private static final String SUPERSEDE = """
            update data_cut set superseded_reason = :reason, superseded_by = :by, superseded_at = :at,
                   version = version + 1 where id = :id
            """;

    private static final String CONTEXT = "update data_cut set context = :context, lines = :lines where id = :id";

    private final EntityManager entities;
    private final ObjectMapper json;

    DataCutQueries(EntityManager entities, ObjectMapper json) {
        this.entities = entities;
        this.json = json;
    }

    /** A cut as stored. */
    record Row(
            String id,
            String season,
            String name,
            String madeBy,
            Instant madeAt,
            String supersededReason,
            Integer version,
            Long lines,
            String context) {
        DataCutView view(ObjectMapper json) {
            try {
                return new DataCutView(
                        id,
                        season,
                        name,
                        madeBy,
                        madeAt,
                        supersededReason,
                        version,
                        lines,
                        json.readValue(context, CutContext.class));
            } catch (JsonProcessingException fault) {
                throw new IllegalStateException("The context of cut " + id + " cannot be read", fault);
            }
        }
    }

    @SuppressWarnings("unchecked")
    public List<DataCutView> all(String season) {
        var query = entities.createNativeQuery(
                SELECT + (season == null ? "" : " where c.season = :season") + " order by c.made_at, c.name",
                Row.class);
        if (season != null) {
            query.setParameter("season", season);
        }
        return ((List<Row>) query.getResultList())
                .stream().map(row -> row.view(json)).toList();
    }

    @SuppressWarnings("unchecked")
    Optional<DataCutView> find(UUID id) {
        return ((List<Row>) entities.createNativeQuery(SELECT + " where c.id = :id", Row.class)
                        .setParameter("id", id)
                        .getResultList())
                .stream().map(row -> row.view(json)).findFirst();
    }

    public DataCutView require(UUID id) {
        return find(id).orElseThrow(() ->
                new NotFound("CUT_UNKNOWN", "No data cut " + id + " was made; /api/v1/data-cuts lists them"));
    }

    /** @return how many lines it holds */
    int insert(UUID id, String season, String name, String by, Instant at) {
        entities.createNativeQuery(INSERT)
                .setParameter("id", id)
                .setParameter("season", season)
                .setParameter("name", name)
                .setParameter("by", by)
                .setParameter("at", at)
                .executeUpdate();
        return entities.createNativeQuery(FILL)
                .setParameter("id", id)
                .setParameter("season", season)
                .executeUpdate();
    }

    void setContext(UUID id, int lines, CutContext context) {
        try {
            entities.createNativeQuery(CONTEXT)
                    .setParameter("id", id)
                    .setParameter("lines", lines)
                    .setParameter("context", json.writeValueAsString(context))
                    .executeUpdate();
        } catch (JsonProcessingException fault) {
            throw new IllegalStateException("The context of a cut cannot be written", fault);
        }
    }

    void supersede(UUID id, String reason, String by, Instant at) {
        entities.createNativeQuery(SUPERSEDE)
                .setParameter("id", id)
                .setParameter("reason", reason)
                .setParameter("by", by)
                .setParameter("at", at)
                .executeUpdate();
    }
}
