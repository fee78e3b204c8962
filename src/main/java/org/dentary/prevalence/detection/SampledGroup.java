package org.dentary.prevalence.detection;

import org.dentary.prevalence.question.Step;

/** Animals alike in season, place, class and the step at which they leave; {@code detected} of them are so. */
record SampledGroup(
        String season,
        String unit,
        String ageClass,
        String sex,
        String mortalitySource,
        String clinicalSigns,
        String station,
        Step step,
        int animals,
        int detected) {}
