package org.dentary.prevalence;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.stream.Stream;
import org.dentary.cautions.CautionService;
import org.dentary.cautions.CautionView;
import org.dentary.cautions.Hazard;

/** The reviewed cautions that go with a report, and whose word stands above it. */
@ApplicationScoped
public class ReportCautions {
    private final CautionService cautions;

    ReportCautions(CautionService cautions) {
        this.cautions = cautions;
    }

    /** Each once, in the order of the hazards. */
    public List<String> of(String disease, Hazard... hazards) {
        return Stream.concat(
                        Stream.of(hazards)
                                .flatMap(hazard -> cautions.at(hazard, disease).stream())
                                .distinct()
                                .map(ReportCautions::told),
                        Stream.of("The laboratory's and the health agency's own reports and protocols stand above this"
                                + " report."))
                .toList();
    }

    private static String told(CautionView caution) {
        return caution.text() + " Who decides: " + caution.authority()
                + (caution.reviewed() ? "." : "; not reviewed locally.");
    }
}
