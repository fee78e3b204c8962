package org.dentary.platform.problem;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.security.ForbiddenException;
import io.quarkus.security.UnauthorizedException;
import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.WebApplicationException;
import jakarta.ws.rs.core.Response;
import java.sql.SQLException;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.hibernate.exception.ConstraintViolationException;
import org.jboss.logging.Logger;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;

/** The one place where faults become answers: problem+json for programs, a page for people, nothing internal in either. */
public class ProblemMapper {
    /** PostgreSQL's character_not_in_repertoire. */
    private static final String NOT_TEXT = "22021";

    /** PostgreSQL's string_data_right_truncation, numeric_value_out_of_range, datetime_field_overflow and program_limit_exceeded. */
    private static final Set<String> BEYOND = Set.of("22001", "22003", "22008", "54000");

    private static final Logger LOG = Logger.getLogger(ProblemMapper.class);

    private final BodyLimit limit;
    private final OfferedMethods methods;

    ProblemMapper(BodyLimit limit, OfferedMethods methods) {
        this.limit = limit;
        this.methods = methods;
    }

    @ServerExceptionMapper
    public Response refusal(DomainException refusal, RoutingContext request) {
        return ProblemAnswers.answer(
                request, refusal.status(), refusal.code(), refusal.title(), refusal.getMessage(), refusal.errors());
    }

    @ServerExceptionMapper
    public Response violations(jakarta.validation.ConstraintViolationException fault, RoutingContext request) {
        if (sentNothing(request)) {
            return ProblemAnswers.answer(
                    request, 400, "BODY_EMPTY", "Malformed request", "The body is empty; send JSON", List.of());
        }
        List<FieldProblem> errors = fault.getConstraintViolations().stream()
                .map(FieldProblem::of)
                .sorted((a, b) -> a.field().compareTo(b.field()))
                .toList();
        String detail = errors.stream()
                .map(e -> e.field().isEmpty() ? e.message() : e.field() + ": " + e.message())
                .collect(Collectors.joining("; "));
        return ProblemAnswers.answer(request, 422, "INVALID", "Not accepted as given", detail, errors);
    }

    @ServerExceptionMapper
    public Response badJson(MismatchedInputException fault, RoutingContext request) {
        if (fault.getPath().isEmpty() && fault.getTargetType() != null && JsonProblems.isEmptyBody(fault)) {
            return ProblemAnswers.answer(
                    request, 400, "BODY_EMPTY", "Malformed request", "The body is empty; send JSON", List.of());
        }
        return badValue(fault, request);
    }

    @ServerExceptionMapper
    public Response brokenJson(JsonProcessingException fault, RoutingContext request) {
        return malformed(fault, request);
    }

    @ServerExceptionMapper
    public Response web(WebApplicationException fault, RoutingContext request) {
        for (Throwable cause = fault.getCause(); cause != null; cause = cause.getCause()) {
            if (cause instanceof DomainException refusal) {
                return refusal(refusal, request);
            }
            if (cause instanceof MismatchedInputException mismatch) {
                return badJson(mismatch, request);
            }
            if (cause instanceof JsonProcessingException broken) {
                return malformed(broken, request);
            }
        }
        int status = StatusAnswers.status(fault, request);
        if (status < 400) {
            return fault.getResponse();
        }
        if (status != 404 && status != 405) {
            return StatusAnswers.of(status, "", limit.most(), request);
        }
        String offered = methods.at(request.normalizedPath());
        boolean there = !offered.isEmpty()
                && !List.of(offered.split(", "))
                        .contains(request.request().method().name());
        Response answer = StatusAnswers.of(there ? 405 : status, offered, limit.most(), request);
        return there ? Response.fromResponse(answer).header("Allow", offered).build() : answer;
    }

    @ServerExceptionMapper
    public Response noAccount(UnauthorizedException fault, RoutingContext request) {
        return ProblemAnswers.signIn(request, "ACCOUNT_REQUIRED", "Sign in, or send Basic or Bearer credentials");
    }

    @ServerExceptionMapper
    public Response wrongAccount(AuthenticationFailedException fault, RoutingContext request) {
        return ProblemAnswers.signIn(request, "CREDENTIALS_REFUSED", "The name, password or token was not accepted");
    }

    @ServerExceptionMapper
    public Response forbidden(ForbiddenException fault, RoutingContext request) {
        return ProblemAnswers.answer(
                request,
                403,
                "NOT_ALLOWED",
                "Not allowed",
                "This account's role may not do this; ask the coordinator if it should",
                List.of());
    }

    @ServerExceptionMapper
    public Response constraint(ConstraintViolationException fault, RoutingContext request) {
        return refusal(ConstraintProblems.of(fault), request);
    }

    @ServerExceptionMapper
    public Response unknown(Throwable fault, RoutingContext request) {
        for (Throwable cause = fault; cause != null; cause = cause.getCause()) {
            if (cause instanceof DomainException refusal) {
                return refusal(refusal, request);
            }
            if (cause instanceof ConstraintViolationException constraint) {
                return refusal(ConstraintProblems.of(constraint), request);
            }
            if (cause instanceof SQLException sql && NOT_TEXT.equals(sql.getSQLState())) {
                return ProblemAnswers.answer(
                        request,
                        422,
                        "CHARACTER_NOT_TEXT",
                        "Not accepted as given",
                        "Something sent holds a character that no text has (NUL); type it anew, or check the file or scanner",
                        List.of());
            }
            if (cause instanceof SQLException sql && BEYOND.contains(String.valueOf(sql.getSQLState()))) {
                return ProblemAnswers.answer(
                        request,
                        422,
                        "BEYOND_RANGE",
                        "Not accepted as given",
                        "A number, date or text sent is beyond what can be recorded; check each for a slip, and send it anew",
                        List.of());
            }
        }
        if (fault instanceof IllegalArgumentException
                && String.valueOf(fault.getMessage()).startsWith("Failed to parse media type")) {
            return web(new WebApplicationException(StatusAnswers.hasUnreadableType(request) ? 415 : 406), request);
        }
        if (isNoneOffered(fault, request)) {
            LOG.warnf(
                    fault,
                    "%s %s was sent what is none",
                    request.request().method(),
                    request.request().path());
            return ProblemAnswers.answer(
                    request,
                    422,
                    "NOT_A_VALUE",
                    "Not accepted as given",
                    "Something sent is not of the kind that its field takes (a number, a day, an id or a choice of a list);"
                            + " open the page again and choose anew",
                    List.of());
        }
        String id = UUID.randomUUID().toString();
        LOG.errorf(
                fault,
                "Request %s %s %s failed",
                id,
                request.request().method(),
                request.request().path());
        return ProblemAnswers.answer(
                request,
                500,
                "FAULT",
                "Something broke",
                "The service could not answer. Nothing was half-written. Quote request " + id + " when you report it",
                List.of());
    }

    /**
     * Whether a page was sent a text that it read as what it is not: a hidden field or a choice that no page offered. What people
     * type is judged by their form, which shows it again; a program's body and address are judged before they come here, so
     * that the same fault behind them is the service's own.
     */
    private static boolean isNoneOffered(Throwable fault, RoutingContext request) {
        if (request.request().path().startsWith("/api/")) {
            return false;
        }
        String said = String.valueOf(fault.getMessage());
        return fault instanceof DateTimeParseException
                || (fault instanceof IllegalArgumentException
                        && (fault instanceof NumberFormatException
                                || said.startsWith("No enum constant")
                                || said.startsWith("Invalid UUID string")
                                || said.startsWith("UUID string too large")));
    }

    private static Response badValue(JsonMappingException fault, RoutingContext request) {
        String field = JsonProblems.path(fault);
        String message = JsonProblems.explain(fault);
        return ProblemAnswers.answer(
                request,
                422,
                "INVALID_VALUE",
                "Not accepted as given",
                field.isEmpty() ? message : field + ": " + message,
                List.of(new FieldProblem(field, "INVALID_VALUE", message)));
    }

    private Response malformed(JsonProcessingException fault, RoutingContext request) {
        if (fault.getCause() instanceof WebApplicationException stopped) {
            return web(stopped, request);
        }
        if (fault instanceof StreamConstraintsException || fault.getCause() instanceof StreamConstraintsException) {
            return JsonProblems.isTooDeep(fault)
                    ? ProblemAnswers.answer(
                            request,
                            400,
                            "TOO_DEEP",
                            "Malformed request",
                            "The body has lists or objects within each other deeper than any request here; send it as the"
                                    + " document of this route shows",
                            List.of())
                    : StatusAnswers.tooLarge(limit.most(), request);
        }
        if (fault.getCause() instanceof DomainException refusal) {
            return refusal(refusal, request);
        }
        if (fault instanceof JsonMappingException mapping) {
            return badValue(mapping, request);
        }
        String where = fault.getLocation() == null
                ? ""
                : " near line " + fault.getLocation().getLineNr() + ", column "
                        + fault.getLocation().getColumnNr();
        return ProblemAnswers.answer(
                request,
                400,
                "MALFORMED_JSON",
                "Malformed request",
                "The body is not valid JSON (RFC 8259, in UTF-8)" + where + "; mend it there and send it again",
                List.of());
    }

    private static boolean sentNothing(RoutingContext request) {
        String length = request.request().getHeader("Content-Length");
        String method = request.request().method().name();
        return (method.equals("PUT") || method.equals("POST"))
                && request.request().getHeader("Transfer-Encoding") == null
                && (length == null || length.equals("0"));
    }
}
