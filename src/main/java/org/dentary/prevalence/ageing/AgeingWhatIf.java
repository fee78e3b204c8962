package org.dentary.prevalence.ageing;

import java.util.List;
import java.util.Map;
import org.dentary.prevalence.PrevalenceReport.CutName;

/**
 * A what-if of ageing error. No interval stands in it: neither chance in the counts nor the error of the matrix is carried on.
 *
 * @param label always {@code what-if}
 * @param title what it is a what-if of
 * @param season season code
 * @param disease disease code
 * @param species species code
 * @param cut the data cut it stands on, or null
 * @param asOf when its lines were read, RFC 3339
 * @param scope which animals count, by field
 * @param incomplete whether more is pending than the plan allows
 * @param matrix the ageing error assumed
 * @param condition by sex of the matrix's tables: largest over smallest singular value; 1 where nobody errs
 * @param patterns by sex, then all sexes added up
 * @param sentences what follows, in words
 * @param assumptions what has to hold for it
 * @param notes how it was computed and what the animals are
 * @param warnings what makes it weak
 * @param cautions reviewed cautions that go with the figures
 */
public record AgeingWhatIf(
        String label,
        String title,
        String season,
        String disease,
        String species,
        CutName cut,
        String asOf,
        Map<String, List<String>> scope,
        boolean incomplete,
        ErrorMatrix matrix,
        Map<String, Double> condition,
        List<AgePattern> patterns,
        List<String> sentences,
        List<String> assumptions,
        List<String> notes,
        List<String> warnings,
        List<String> cautions) {
    static final String LABEL = "what-if";
}
