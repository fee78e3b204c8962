package org.dentary.result;

import static org.dentary.intake.IntakeFixture.as;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.restassured.response.ValidatableResponse;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.util.UUID;
import java.util.function.Consumer;
import org.dentary.SeasonFixture;
import org.dentary.codes.Part;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;

/** Deer whose node is at the laboratory, and what the laboratory says of it, over HTTP. */
@ApplicationScoped
public class FindingsFixture {
    private final SeasonFixture season;
    private final IntakeFixture intake;
    private final EntityManager entities;

    FindingsFixture(SeasonFixture season, IntakeFixture intake, EntityManager entities) {
        this.season = season;
        this.intake = intake;
        this.entities = entities;
    }

    /** A unit of its own, in which the disease is not established. */
    public String unitWithoutTheDisease() {
        season.ensure();
        String code = "T_" + UUID.randomUUID().toString().substring(0, 8).toUpperCase(java.util.Locale.ROOT);
        QuarkusTransaction.requiringNew().run(() -> {
            entities.createNativeQuery("insert into management_unit (code, name, position, region) values ('" + code
                            + "', 'Unit " + code + "', 90, 'T_NORTH')")
                    .executeUpdate();
            entities.createNativeQuery(
                            "insert into plan_setting (name, value, unit) values ('DISEASES_ESTABLISHED', '', '" + code
                                    + "')")
                    .executeUpdate();
        });
        return code;
    }

    /** A deer of that unit with its left node, taken by the sampler and sent to the screening laboratory. */
    public Deer atTheLaboratory(String unit) {
        return atTheLaboratory(unit, facts -> {});
    }

    /** @param more adds to what is taken in */
    public Deer atTheLaboratory(String unit, Consumer<ObjectNode> more) {
        season.ensure();
        Deer deer = intake.aDeer();
        ObjectNode facts = intake.facts();
        facts.put("managementUnit", unit);
        more.accept(facts);
        IntakeFixture.with(facts, intake.node(deer));
        intake.take(deer, facts);
        String code = deer.label(Part.NODE_LEFT);
        QuarkusTransaction.requiringNew().run(() -> {
            String submission = UUID.randomUUID().toString();
            entities.createNativeQuery(
                            "insert into submission (id, laboratory, state, dispatched_at, opened_by, opened_at)"
                                    + " values ('" + submission
                                    + "', 'T_LAB', 'DISPATCHED', '2025-11-15T15:00:00Z', 'T_LIAISON',"
                                    + " '2025-11-15T14:00:00Z')")
                    .executeUpdate();
            entities.createNativeQuery(
                            "insert into submission_specimen (submission, code, packed_at, packed_by, recorded_at) values ('"
                                    + submission + "', '" + code + "', '2025-11-15T14:30:00Z', 'T_LIAISON', now())")
                    .executeUpdate();
        });
        return deer;
    }

    /** A deer whose unit nobody knows, of a season in which the disease is established nowhere; its left node at the laboratory. */
    public Deer ofUnknownUnit() {
        season.ensure();
        QuarkusTransaction.requiringNew().run(() -> {
            entities.createNativeQuery(
                            "insert into season (code, name, starts_on, ends_on, state) values"
                                    + " ('T1971', 'Test season 1971', '1971-09-01', '1972-08-31', 'CLOSED') on conflict do nothing")
                    .executeUpdate();
            entities.createNativeQuery(
                            "insert into plan_setting (name, value, season) select 'DISEASES_ESTABLISHED', '',"
                                    + " 'T1971' where not exists (select 1 from plan_setting where season = 'T1971')")
                    .executeUpdate();
        });
        return atTheLaboratory("UNKNOWN", facts -> facts.put("diedOn", "1971-11-14"));
    }

    /** A final finding on the left node. */
    public ValidatableResponse finds(Deer deer, String stage, String word, String reason) {
        return finds(deer, stage, word, reason, stage.equals("CONFIRMATORY") ? "T_CONFIRM" : "T_SCREEN");
    }

    /** The same by another method. */
    public ValidatableResponse finds(Deer deer, String stage, String word, String reason, String method) {
        return intake.put(
                "liaison",
                "/findings/" + UUID.randomUUID(),
                "{\"specimens\":[\"" + deer.label(Part.NODE_LEFT) + "\"],\"method\":\""
                        + method + "\",\"stage\":\"" + stage
                        + "\",\"finding\":\"" + word + "\",\"status\":\"FINAL\",\"accession\":\"A-" + deer.kit() + "-"
                        + stage
                        + "\",\"laboratory\":\"T_LAB\",\"testedOn\":\"2025-11-20\",\"reportedOn\":\"2025-11-21\""
                        + (reason == null ? "" : ",\"reason\":\"" + reason + "\"") + "}");
    }

    /** Releases the detection as the coordinator. */
    public ValidatableResponse releases(Deer deer) {
        return as("coordinator")
                .contentType("application/json")
                .body("{\"disease\":\"CWD\"}")
                .put("/api/v1/animals/" + deer.kit() + "/release")
                .then();
    }
}
