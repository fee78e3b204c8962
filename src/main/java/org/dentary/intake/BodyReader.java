package org.dentary.intake;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.validation.ConstraintViolation;
import jakarta.validation.Validator;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.dentary.platform.problem.FieldProblem;
import org.dentary.platform.problem.InvalidInput;

/** Reads what a form makes as the command that the API would be sent, by the same rules. */
@ApplicationScoped
public class BodyReader {
    private final ObjectMapper json;
    private final Validator validator;

    BodyReader(ObjectMapper json, Validator validator) {
        this.json = json;
        this.validator = validator;
    }

    /** @throws InvalidInput naming every field at fault */
    public <T> T read(JsonNode body, Class<T> command) {
        T read;
        try {
            read = json.treeToValue(body, command);
        } catch (JsonMappingException fault) {
            String field = fault.getPath().stream()
                    .map(each -> each.getFieldName() == null ? "[" + each.getIndex() + "]" : "." + each.getFieldName())
                    .collect(Collectors.joining())
                    .replaceFirst("^\\.", "");
            throw InvalidInput.field(
                    field, "INVALID_VALUE", "What is given for " + field + " is not one of its values");
        } catch (JsonProcessingException fault) {
            throw new IllegalStateException("a form makes a tree, and a tree can be read", fault);
        }
        check(read);
        return read;
    }

    /** @throws InvalidInput naming every field at fault */
    public <T> void check(T read) {
        Set<ConstraintViolation<T>> violations = validator.validate(read);
        if (!violations.isEmpty()) {
            List<FieldProblem> problems = violations.stream()
                    .map(violation -> new FieldProblem(
                            violation.getPropertyPath().toString(),
                            violation.getInvalidValue() == null ? "REQUIRED" : "INVALID_VALUE",
                            violation.getMessage()))
                    .sorted(Comparator.comparing(FieldProblem::field))
                    .toList();
            throw InvalidInput.of(problems);
        }
    }
}
