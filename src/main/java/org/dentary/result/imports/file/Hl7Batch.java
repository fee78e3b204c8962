package org.dentary.result.imports.file;

import java.util.Optional;

/**
 * What a file's own batch segments say of its messages (HL7 v2.5.1, 2.10.3): whether each batch that begins ends, and how
 * many messages it says it holds. A file cut off on its way, or with a message lost, shows by it.
 *
 * @param begun batches that begin (BHS)
 * @param ended batches that end (BTS)
 * @param said messages that the batches say they hold (BTS-1), or null where one does not say it
 */
record Hl7Batch(int begun, int ended, Long said) {
    /** Reads the batch segments. */
    static Hl7Batch of(String file) {
        int begun = 0;
        int ended = 0;
        Long said = 0L;
        for (String segment : file.split("[\r\n]+")) {
            if (segment.startsWith("BHS")) {
                begun++;
            }
            if (segment.startsWith("BTS")) {
                ended++;
                String[] fields = segment.split("\\|", -1);
                boolean counted = fields.length > 1 && fields[1].trim().matches("[0-9]{1,9}");
                said = said != null && counted ? Long.valueOf(said + Long.parseLong(fields[1].trim())) : null;
            }
        }
        return new Hl7Batch(begun, ended, said);
    }

    /** Why the messages that were read are not what the file says it holds. */
    Optional<String> fault(int read) {
        if (begun > ended) {
            return Optional.of("a batch begins (BHS) and does not end (BTS), so that a part of the file is missing");
        }
        return ended > 0 && said != null && said != read
                ? Optional.of(
                        "its batches say that they hold " + said + " messages (BTS-1), and " + read + " were found")
                : Optional.empty();
    }
}
