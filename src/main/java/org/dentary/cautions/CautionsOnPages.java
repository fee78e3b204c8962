package org.dentary.cautions;

import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Named;
import java.util.List;

/** Cautions for templates: {@code {#cautions hazard="INTAKE" /}} asks {@code cdi:cautions}. */
@Named("cautions")
@RequestScoped
public class CautionsOnPages {
    private final CautionService cautions;

    CautionsOnPages(CautionService cautions) {
        this.cautions = cautions;
    }

    /** What is shown at the step of that name. */
    public List<CautionView> at(String hazard) {
        return cautions.at(Hazard.valueOf(hazard));
    }
}
