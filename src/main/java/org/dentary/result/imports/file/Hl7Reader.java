package org.dentary.result.imports.file;

import ca.uhn.hl7v2.DefaultHapiContext;
import ca.uhn.hl7v2.HL7Exception;
import ca.uhn.hl7v2.HapiContext;
import ca.uhn.hl7v2.model.v251.group.ORU_R01_OBSERVATION;
import ca.uhn.hl7v2.model.v251.group.ORU_R01_ORDER_OBSERVATION;
import ca.uhn.hl7v2.model.v251.group.ORU_R01_PATIENT_RESULT;
import ca.uhn.hl7v2.model.v251.group.ORU_R01_SPECIMEN;
import ca.uhn.hl7v2.model.v251.message.ORU_R01;
import ca.uhn.hl7v2.model.v251.segment.OBR;
import ca.uhn.hl7v2.model.v251.segment.OBX;
import ca.uhn.hl7v2.parser.CanonicalModelClassFactory;
import ca.uhn.hl7v2.parser.PipeParser;
import ca.uhn.hl7v2.util.Hl7InputStreamMessageStringIterator;
import ca.uhn.hl7v2.validation.impl.ValidationContextFactory;
import java.io.IOException;
import java.io.StringReader;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.dentary.plan.LaboratoryView;
import org.dentary.platform.CalendarText;
import org.dentary.platform.problem.InvalidInput;
import org.dentary.result.mapping.CodeMaps;

/**
 * Reads HL7 v2.5.1 {@code ORU^R01} messages, one after another in a file, by HAPI. Where things stand: specimens SPM-2
 * (placer; each SPM of an order one), accession OBR-3, item OBX-4, method OBX-17 or OBR-4, stage OBX-3 (a code of ours), word OBX-5,
 * status OBX-11 (P, F, C, X; it must be there), tested OBX-14, reported OBR-22, measured value NTE-3, performing laboratory OBX-23, tissue
 * SPM-4 where the laboratory's code map names it. Codes of fields that the map in force on the message's day (MSH-7) names are the laboratory's; others
 * are ours. A row's line is the number of its OBX in the file.
 */
public final class Hl7Reader {
    private static final Map<String, String> STATUS =
            Map.of("P", "PRELIMINARY", "F", "FINAL", "C", "CORRECTED", "X", "CANCELLED");

    private static final int LONGEST_SAID = 200;
    /** MSH-18, where the field separator is the fourth character. */
    private static final Pattern CHARACTER_SET =
            Pattern.compile("MSH(.)(?:[^\\r\\n]*?\\1){16}([^\\r\\n]*?)(?:~|\\1|[\\r\\n])");

    private static final Pattern LATIN = Pattern.compile("8859/([1-9])");
    private static final Set<String> UNICODE = Set.of("", "ASCII", "UNICODE UTF-8", "UTF-8");

    private Hl7Reader() {}

    /**
     * Reads every message.
     *
     * @throws InvalidInput if a message is not an ORU^R01 of version 2.5.1; nothing of the file is taken then
     */
    public static ImportFile read(
            byte[] file, List<CodeMaps.Edition> editions, Collection<LaboratoryView> laboratories, LocalDate today) {
        List<ImportRow> rows = new ArrayList<>();
        List<RowProblem> problems = new ArrayList<>();
        String text = decoded(file);
        Hl7Batch batch = Hl7Batch.of(text);
        int read = 0;
        try (HapiContext context = new DefaultHapiContext()) {
            context.setModelClassFactory(new CanonicalModelClassFactory("2.5.1"));
            context.setValidationContext(ValidationContextFactory.defaultValidation());
            PipeParser parser = context.getPipeParser();
            var messages = new Hl7InputStreamMessageStringIterator(new StringReader(text));
            messages.setIgnoreComments(true);
            while (messages.hasNext()) {
                if (!(parser.parse(messages.next()) instanceof ORU_R01 message)) {
                    throw broken("it is not an ORU^R01");
                }
                read++;
                String made =
                        day(message.getMSH().getDateTimeOfMessage().getTime().getValue());
                CodeMaps.Edition edition =
                        CodeMaps.inForce(editions, made(made, today)).orElse(null);
                message(message, edition, laboratories, rows, problems);
                TableReader.limit(rows);
            }
        } catch (HL7Exception | IOException | RuntimeException e) {
            if (e instanceof InvalidInput known) {
                throw known;
            }
            throw broken(inWords(e));
        }
        batch.fault(read).ifPresent(fault -> {
            throw broken(fault);
        });
        if (rows.isEmpty()) {
            throw broken("no observation was found in it; each message begins with MSH and has OBR and OBX segments");
        }
        return new ImportFile(rows, problems);
    }

    /**
     * The file in the character set that its first message names: UTF-8 where MSH-18 is empty (HL7 v2.5.1, table 0211).
     *
     * @throws InvalidInput if it is not in it; replacing what cannot be read would change what was measured
     */
    private static String decoded(byte[] file) {
        Matcher named = CHARACTER_SET.matcher(new String(file, StandardCharsets.ISO_8859_1));
        String given = named.find() ? named.group(2).strip() : "";
        Matcher latin = LATIN.matcher(given);
        Charset set = latin.matches() ? Charset.forName("ISO-8859-" + latin.group(1)) : StandardCharsets.UTF_8;
        boolean known = latin.matches() || UNICODE.contains(given);
        try {
            if (!known) {
                throw new CharacterCodingException();
            }
            String text = set.newDecoder().decode(ByteBuffer.wrap(file)).toString();
            return text.startsWith("\uFEFF") ? text.substring(1) : text;
        } catch (CharacterCodingException e) {
            throw new InvalidInput(
                    "WRONG_CHARACTER_SET",
                    known
                            ? "The file is not in " + set
                                    + ", as its first message says or leaves open (MSH-18); ask the"
                                    + " laboratory to send it in UTF-8. Nothing was stored"
                            : "The first message names the character set '" + given
                                    + "' (MSH-18), which is not read here; UNICODE UTF-8 and 8859/1 to 8859/9 are. Nothing was"
                                    + " stored");
        }
    }

    private static InvalidInput broken(String why) {
        return new InvalidInput(
                "NOT_HL7",
                "The file cannot be read as HL7 v2.5.1 ORU^R01: " + why + ". Nothing was stored; ask the laboratory to"
                        + " send it again");
    }

    /** What the parser says of the message, where it says it of the message and not of itself. */
    private static String inWords(Exception fault) {
        String first = String.valueOf(fault.getMessage()).lines().findFirst().orElse("");
        String plain = first.replaceAll("^[\\w.]+Exception: *", "").replaceAll("\\bnull\\b", "missing");
        boolean ofItself =
                !(fault instanceof HL7Exception) || plain.startsWith("Determine encoding") || plain.isBlank();
        return ofItself
                ? "a segment is not of the form the standard gives it; MSH names the separators, the type and the version"
                : plain.substring(0, Math.min(plain.length(), LONGEST_SAID));
    }

    private static LocalDate made(String day, LocalDate today) {
        try {
            return day == null ? today : CalendarText.day(day);
        } catch (DateTimeParseException e) {
            throw broken("MSH-7 does not say on which day the message was made");
        }
    }

    private static void message(
            ORU_R01 message,
            CodeMaps.Edition edition,
            Collection<LaboratoryView> laboratories,
            List<ImportRow> rows,
            List<RowProblem> problems)
            throws HL7Exception {
        String control = message.getMSH().getMessageControlID().getValue();
        for (ORU_R01_PATIENT_RESULT animal : message.getPATIENT_RESULTAll()) {
            for (ORU_R01_ORDER_OBSERVATION order : animal.getORDER_OBSERVATIONAll()) {
                String specimens = specimens(order.getSPECIMENAll());
                for (ORU_R01_OBSERVATION observation : order.getOBSERVATIONAll()) {
                    Hl7Words words = new Hl7Words(edition, laboratories, rows.size() + 1, problems);
                    rows.add(row(specimens, order, observation, control, words));
                }
            }
        }
    }

    private static ImportRow row(
            String specimens,
            ORU_R01_ORDER_OBSERVATION in,
            ORU_R01_OBSERVATION observation,
            String control,
            Hl7Words words)
            throws HL7Exception {
        OBX x = observation.getOBX();
        OBR order = in.getOBR();
        String method = x.getObservationMethodReps() > 0
                ? words.of("OBX-17", "test_method", x.getObservationMethod(0).encode())
                : words.of(
                        "OBR-4",
                        "test_method",
                        order.getUniversalServiceIdentifier().encode());
        String status = x.getObservationResultStatus().getValue();
        return new ImportRow(
                words.line(),
                specimens,
                order.getFillerOrderNumber().getEntityIdentifier().getValue(),
                empty(x.getObservationSubID().getValue()),
                method,
                words.of("OBX-3", "stage", x.getObservationIdentifier().encode()),
                x.getObservationValueReps() == 0
                        ? null
                        : words.of("OBX-5", "finding", x.getObservationValue(0).encode()),
                STATUS.getOrDefault(status == null ? "" : status, status == null ? "" : status),
                day(x.getDateTimeOfTheObservation().getTime().getValue()),
                day(order.getResultsRptStatusChngDateTime().getTime().getValue()),
                x.getAbnormalFlagsReps() == 0
                        ? null
                        : words.of(
                                "OBX-8",
                                "unsuitable_reason",
                                x.getAbnormalFlags(0).encode()),
                observation.getNTEReps() == 0
                        ? null
                        : empty(observation.getNTE(0).getComment(0).getValue()),
                words.laboratory(x.getPerformingOrganizationName()),
                null,
                control,
                tissue(in.getSPECIMENAll(), words));
    }

    /** All tissue of the order: more than one SPM is a homogenate or a pool. One without a code leaves the row without any. */
    private static String specimens(List<ORU_R01_SPECIMEN> named) {
        List<String> codes = named.stream()
                .map(one -> empty(one.getSPM()
                        .getSpecimenID()
                        .getPlacerAssignedIdentifier()
                        .getEntityIdentifier()
                        .getValue()))
                .toList();
        return codes.isEmpty() || codes.stream().anyMatch(Objects::isNull) ? null : String.join("+", codes);
    }

    /** What the message calls the tissue, where it calls all of it the same. */
    private static String tissue(List<ORU_R01_SPECIMEN> named, Hl7Words words) throws HL7Exception {
        if (!words.mapped("SPM-4")) {
            return null;
        }
        Set<String> said = new HashSet<>();
        for (ORU_R01_SPECIMEN one : named) {
            said.add(words.of(
                    "SPM-4", "specimen_code", one.getSPM().getSpecimenType().encode()));
        }
        return said.size() == 1 ? said.iterator().next() : null;
    }

    private static String day(String time) {
        return time == null || time.length() < 8
                ? null
                : time.substring(0, 4) + "-" + time.substring(4, 6) + "-" + time.substring(6, 8);
    }

    static String empty(String text) {
        return text == null || text.isBlank() ? null : text.trim();
    }
}
