package org.dentary.plan;

import java.math.BigDecimal;

/**
 * What an animal of a class says about the presence of a disease, against one of the reference class.
 *
 * @param set the set it belongs to; a changed weight is a new set
 * @param relativeRisk 0 or more; 1 is the reference class
 * @param populationShare the class's share of the herd in [0, 1], or null
 * @param citation where the weight was published
 */
public record RiskWeightView(
        String set,
        String disease,
        String species,
        String ageClass,
        String sex,
        String mortalitySource,
        String clinicalSigns,
        BigDecimal relativeRisk,
        BigDecimal populationShare,
        String citation) {}
