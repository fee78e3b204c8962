package org.dentary.jaw.key;

import io.quarkus.security.PermissionsAllowed;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.time.Clock;
import java.util.List;
import org.dentary.jaw.AgeingPlans;
import org.dentary.platform.account.Act;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.ExampleObject;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;

/** Ages a set of tooth observations; stores nothing. */
@Path("/api/v1/jaw-key")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
public class JawKeyResource {
    private final AgeingPlans plans;
    private final Clock clock;

    JawKeyResource(AgeingPlans plans, Clock clock) {
        this.plans = plans;
        this.clock = clock;
    }

    /**
     * The key's answer to an observation.
     *
     * @param region region whose dates apply; those of everywhere when left out
     */
    @POST
    @PermissionsAllowed(Act.READ_COMMON)
    @Operation(
            summary = "Age a jaw from what was seen in it",
            description = "Stores nothing. Ages are estimates: not for enforcement or prizes.")
    public JawAnswer answer(
            @NotNull
                    @RequestBody(
                            content = @Content(examples = @ExampleObject(name = "A yearling in November", value = """
                        {"diedOn": "2026-11-15", "cheekTeeth": 6,
                         "thirdTooth": {"cusps": 2, "eruption": "ERUPTING", "dentine": "NOT_EXPOSED"},
                         "sixthTooth": {"eruption": "ERUPTING", "dentine": "NOT_EXPOSED"}}
                        """)))
                    JawObservation observation,
            @QueryParam("region") String region) {
        JawContext context =
                new JawContext(null, new JawContext.Exam(null, clock.instant(), null, null, null, null), null);
        AgeingPlan plan = plans.on(observation.diedOn(), region);
        List<FieldProblem> problems = JawKey.problems(observation, context, plan).stream()
                .map(problem -> new FieldProblem(problem.field(), problem.rule(), problem.message()))
                .toList();
        if (!problems.isEmpty()) {
            throw InvalidInput.of(problems);
        }
        return JawKey.answer(observation, context, plan);
    }
}
