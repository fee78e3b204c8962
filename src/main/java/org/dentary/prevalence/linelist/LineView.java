package org.dentary.prevalence.linelist;

/** One line as it leaves: codes and words only, the released outcome, never a contact or an exact place. */
public record LineView(
        String kit,
        String season,
        String disease,
        String species,
        String origin,
        String sex,
        String sexEvidence,
        String ageClass,
        boolean ageDisputed,
        String managementUnit,
        String region,
        String station,
        String diedOn,
        String mortalitySource,
        String collectionRoute,
        String clinicalSigns,
        String samplingBasis,
        boolean hasSpecimen,
        String outcome,
        String exclusion,
        boolean identityException) {
    static LineView of(Object[] row) {
        return new LineView(
                text(row[0]),
                text(row[1]),
                text(row[2]),
                text(row[3]),
                text(row[4]),
                text(row[5]),
                text(row[6]),
                text(row[7]),
                Boolean.parseBoolean(text(row[8])),
                text(row[9]),
                text(row[10]),
                text(row[11]),
                text(row[12]),
                text(row[13]),
                text(row[14]),
                text(row[15]),
                text(row[16]),
                Boolean.parseBoolean(text(row[17])),
                text(row[18]),
                text(row[19]),
                Boolean.parseBoolean(text(row[20])));
    }

    private static String text(Object value) {
        return value == null ? "" : value.toString();
    }
}
