package org.dentary.result.imports;

import ca.uhn.hl7v2.DefaultHapiContext;
import ca.uhn.hl7v2.HL7Exception;
import ca.uhn.hl7v2.HapiContext;
import ca.uhn.hl7v2.model.v251.group.ORU_R01_OBSERVATION;
import ca.uhn.hl7v2.model.v251.group.ORU_R01_ORDER_OBSERVATION;
import ca.uhn.hl7v2.model.v251.group.ORU_R01_PATIENT_RESULT;
import ca.uhn.hl7v2.model.v251.message.ORU_R01;
import ca.uhn.hl7v2.model.v251.segment.OBR;
import ca.uhn.hl7v2.model.v251.segment.OBX;
import ca.uhn.hl7v2.parser.CanonicalModelClassFactory;
import ca.uhn.hl7v2.parser.PipeParser;
import ca.uhn.hl7v2.util.Hl7InputStreamMessageStringIterator;
import ca.uhn.hl7v2.validation.impl.ValidationContextFactory;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.dentary.platform.problem.InvalidInput;

/**
 * Reads HL7 v2.5.1 {@code ORU^R01} messages, one after another in a file, by HAPI. Where things stand: specimen SPM-2
 * (placer), accession OBR-3, item OBX-21 or OBX-4, method OBX-17 or OBR-4, stage OBX-3 (a code of ours), word OBX-5,
 * status OBX-11 (P, F, C, X), tested OBX-14, reported OBR-22, measured value NTE-3. A row's line is the number of its OBX
 * in the file.
 */
final class Hl7Reader {
    private static final Map<String, String> STATUS =
            Map.of("P", "PRELIMINARY", "F", "FINAL", "C", "CORRECTED", "X", "CANCELLED");

    private Hl7Reader() {}

    /**
     * Reads every message.
     *
     * @throws InvalidInput if a message is not an ORU^R01 of version 2.5.1; nothing of the file is taken then
     */
    static ImportFile read(byte[] file) {
        List<ImportRow> rows = new ArrayList<>();
        try (HapiContext context = new DefaultHapiContext()) {
            context.setModelClassFactory(new CanonicalModelClassFactory("2.5.1"));
            context.setValidationContext(ValidationContextFactory.defaultValidation());
            PipeParser parser = context.getPipeParser();
            var messages = new Hl7InputStreamMessageStringIterator(new ByteArrayInputStream(file));
            messages.setIgnoreComments(true);
            while (messages.hasNext()) {
                if (!(parser.parse(messages.next()) instanceof ORU_R01 message)) {
                    throw broken("it is not an ORU^R01");
                }
                message(message, rows);
            }
        } catch (HL7Exception | IOException | RuntimeException e) {
            if (e instanceof InvalidInput known) {
                throw known;
            }
            throw broken(String.valueOf(e.getMessage()).lines().findFirst().orElse("it cannot be read"));
        }
        if (rows.isEmpty()) {
            throw broken("no observation was found in it; each message begins with MSH and has OBR and OBX segments");
        }
        return new ImportFile(rows, List.of());
    }

    private static InvalidInput broken(String why) {
        return new InvalidInput(
                "NOT_HL7",
                "The file cannot be read as HL7 v2.5.1 ORU^R01: " + why + ". Nothing was stored; ask the laboratory to"
                        + " send it again");
    }

    private static void message(ORU_R01 message, List<ImportRow> rows) throws HL7Exception {
        String control = message.getMSH().getMessageControlID().getValue();
        for (ORU_R01_PATIENT_RESULT animal : message.getPATIENT_RESULTAll()) {
            for (ORU_R01_ORDER_OBSERVATION order : animal.getORDER_OBSERVATIONAll()) {
                String specimen = order.getSPECIMENReps() == 0
                        ? null
                        : order.getSPECIMEN(0)
                                .getSPM()
                                .getSpecimenID()
                                .getPlacerAssignedIdentifier()
                                .getEntityIdentifier()
                                .getValue();
                for (ORU_R01_OBSERVATION observation : order.getOBSERVATIONAll()) {
                    rows.add(row(rows.size() + 1, specimen, order.getOBR(), observation, control));
                }
            }
        }
    }

    private static ImportRow row(int line, String specimen, OBR order, ORU_R01_OBSERVATION observation, String control)
            throws HL7Exception {
        OBX x = observation.getOBX();
        String method = x.getObservationMethodReps() > 0
                ? x.getObservationMethod(0).getIdentifier().getValue()
                : order.getUniversalServiceIdentifier().getIdentifier().getValue();
        String status = x.getObservationResultStatus().getValue();
        return new ImportRow(
                line,
                specimen,
                order.getFillerOrderNumber().getEntityIdentifier().getValue(),
                empty(x.getObservationSubID().getValue()),
                method,
                x.getObservationIdentifier().getIdentifier().getValue(),
                x.getObservationValueReps() == 0
                        ? null
                        : first(x.getObservationValue(0).encode()),
                STATUS.getOrDefault(status == null ? "" : status, status),
                day(x.getDateTimeOfTheObservation().getTime().getValue()),
                day(order.getResultsRptStatusChngDateTime().getTime().getValue()),
                x.getAbnormalFlagsReps() == 0
                        ? null
                        : empty(x.getAbnormalFlags(0).getValue()),
                observation.getNTEReps() == 0
                        ? null
                        : empty(observation.getNTE(0).getComment(0).getValue()),
                empty(x.getPerformingOrganizationName().getOrganizationName().getValue()),
                null,
                control);
    }

    private static String first(String encoded) {
        return empty(encoded.split("\\^", 2)[0]);
    }

    private static String day(String time) {
        return time == null || time.length() < 8
                ? null
                : time.substring(0, 4) + "-" + time.substring(4, 6) + "-" + time.substring(6, 8);
    }

    private static String empty(String text) {
        return text == null || text.isBlank() ? null : text.trim();
    }
}
