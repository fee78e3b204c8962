package org.dentary.cautions;

/** Where a caution is shown: the step of the work at which it can prevent harm. */
public enum Hazard {
    INTAKE("Taking an animal in"),
    CLINICAL_SIGNS("Animals that looked sick or acted strangely"),
    SAMPLING("Cutting, sawing and taking tissue"),
    AGEING("Ageing from teeth"),
    FORMALIN("Working with formalin"),
    DECONTAMINATION("Cleaning tools and surfaces"),
    LABELING("Labels and containers"),
    PACKING("Packing and shipping"),
    RESULT("Reading a result"),
    NOTIFICATION("Telling people a result"),
    REPORT("Reading a report"),
    CONTACT("Names and places"),
    FIRST_STEPS("First steps after an accident");

    private final String words;

    Hazard(String words) {
        this.words = words;
    }

    /** The step as a heading. */
    public String words() {
        return words;
    }
}
