package org.dentary.result.notification;

import static org.dentary.intake.IntakeFixture.as;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import org.dentary.SeasonFixture;
import org.dentary.animal.line.LineService;
import org.dentary.intake.IntakeFixture;
import org.dentary.intake.IntakeFixture.Deer;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.plan.setting.SettingService;

/** Deer whose hunters left a contact, outcomes as they would have been derived, and what the plan says in letters. */
@ApplicationScoped
public class NotificationFixture {
    public static final String ADVICE = "Have it tested before you eat it, and do not eat meat of an animal in which it"
            + " was detected. This advice is invented for the test.";

    private final SeasonFixture season;
    private final IntakeFixture intake;
    private final LineService lines;
    private final SettingService settings;

    NotificationFixture(SeasonFixture season, IntakeFixture intake, LineService lines, SettingService settings) {
        this.season = season;
        this.intake = intake;
        this.lines = lines;
        this.settings = settings;
    }

    /** Season, numbers, advice and reviewed wordings. */
    public void ensure() {
        season.ensure();
        put(PlanSetting.RESULTS_NUMBER, "555-0150");
        put(PlanSetting.LETTER_SENDER, "Test wildlife agency\n1 Test Road");
        put(PlanSetting.HEALTH_AGENCY, "the Test Health Department");
        put(PlanSetting.HEALTH_AGENCY_NUMBER, "555-0151");
        put(PlanSetting.HEALTH_AGENCY_ADVICE, ADVICE);
        for (String outcome : List.of(
                "DETECTED",
                "NOT_DETECTED",
                "INCONCLUSIVE",
                "UNSUITABLE",
                "NOT_TESTED",
                "NOT_ATTRIBUTABLE",
                "CORRECTION")) {
            as("coordinator")
                    .post("/api/v1/letter-wordings/" + outcome + "/1/review")
                    .then()
                    .statusCode(200);
        }
    }

    private void put(PlanSetting setting, String value) {
        settings.put(setting, value, null, null, null);
    }

    /** A deer with a node and a registration number, brought by somebody of that name and number. */
    public Deer broughtBy(String name, String phone) {
        Deer deer = intake.aDeer();
        ObjectNode body = intake.yearlingWithLeftNode(deer);
        body.putObject("contact").put("name", name).put("phone", phone).put("address", "7 Larch Lane\nMillbrook");
        body.putArray("identifiers").addObject().put("type", "REGISTRATION").put("value", "R-" + deer.kit());
        intake.take(deer, body);
        return deer;
    }

    /** The same without a contact. */
    public Deer withoutContact() {
        Deer deer = intake.aDeer();
        intake.take(deer, intake.yearlingWithLeftNode(deer));
        return deer;
    }

    /** Lets the line say what was derived and what of it is released. */
    public void outcome(Deer deer, String derived, String released) {
        lines.setOutcomes(
                List.of(new LineService.OutcomeOf(deer.kit(), SeasonFixture.DISEASE, derived, released, "")), "TEST");
    }
}
