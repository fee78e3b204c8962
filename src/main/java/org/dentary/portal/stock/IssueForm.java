package org.dentary.portal.stock;

import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.dentary.codes.Part;
import org.dentary.kit.IssueBlock;

/**
 * What was typed to issue a block; kept as typed, so that it can be shown again.
 *
 * @param id made when the form was shown, so that sending it twice issues one block
 */
public record IssueForm(
        String id, String season, String station, String person, String kits, String copies, List<String> parts) {
    static IssueForm fresh(String season, String station) {
        return new IssueForm(
                UUID.randomUUID().toString(),
                season,
                station,
                "",
                "",
                "1",
                List.of("JAW", "NODE_LEFT", "NODE_RIGHT", "FORM", "STUB"));
    }

    /** Whether the part is ticked. */
    public boolean has(String part) {
        return parts.contains(part);
    }

    /** The command; a number that is none becomes 0, which no block may have. */
    IssueBlock command() {
        return new IssueBlock(
                season,
                station,
                person == null || person.isBlank() ? null : person,
                number(kits),
                Stream.of(Part.values()).filter(part -> has(part.name())).toList(),
                number(copies));
    }

    private static int number(String typed) {
        String bare = typed == null ? "" : typed.replaceAll("[\\s,]", "");
        return bare.matches("[0-9]{1,6}") ? Integer.parseInt(bare) : 0;
    }
}
