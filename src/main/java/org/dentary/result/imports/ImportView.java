package org.dentary.result.imports;

import java.time.Instant;
import java.util.List;
import org.dentary.result.imports.file.RowProblem;

/**
 * An import as it stands.
 *
 * @param state {@code PREVIEWED}, {@code POSTING} while a large one is being posted, or {@code POSTED}
 * @param rows lines read, without the header
 * @param postable lines without a fault that say something new
 * @param repeats lines that say what is recorded already, word for word
 * @param posted lines posted; 0 before posting
 * @param problems faults by line, the first thousand; all of them as CSV
 * @param problemCount how many faults there are
 * @param repeatedMessages messages whose number was posted before and that tell of other tests; they are posted only on
 *     being accepted
 */
public record ImportView(
        String id,
        String laboratory,
        String format,
        String fileName,
        String state,
        int rows,
        int postable,
        int repeats,
        int posted,
        List<RowProblem> problems,
        int problemCount,
        String uploadedBy,
        Instant uploadedAt,
        String postedBy,
        Instant postedAt,
        List<RepeatedMessage> repeatedMessages) {
    /**
     * A message whose number (HL7 v2.5.1, MSH-10: unique to the message) another file had.
     *
     * @param lines of this file that it gave and that say something new
     * @param before id of the import that had the number
     */
    public record RepeatedMessage(String message, Long lines, String before, Instant postedAt) {}

    /** The same while it is being posted. */
    ImportView posting() {
        return new ImportView(
                id,
                laboratory,
                format,
                fileName,
                "POSTING",
                rows,
                postable,
                repeats,
                posted,
                problems,
                problemCount,
                uploadedBy,
                uploadedAt,
                postedBy,
                postedAt,
                repeatedMessages);
    }
}
