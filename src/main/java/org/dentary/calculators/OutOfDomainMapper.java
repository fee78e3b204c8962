package org.dentary.calculators;

import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.ProblemAnswers;
import org.dentary.statistics.OutOfDomain;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;

/** A number that a function is not defined for answers 422 with the field and the reason, whichever room asked. */
public class OutOfDomainMapper {
    static final String RULE = "OUT_OF_DOMAIN";

    @ServerExceptionMapper
    public Response outOfDomain(OutOfDomain refusal, RoutingContext request) {
        return ProblemAnswers.answer(
                request, 422, RULE, "Not accepted as given", refusal.getMessage(), List.of(problem(refusal)));
    }

    static FieldProblem problem(OutOfDomain refusal) {
        return new FieldProblem(refusal.field(), RULE, refusal.getMessage());
    }
}
