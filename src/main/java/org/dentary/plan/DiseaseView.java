package org.dentary.plan;

/** A disease under surveillance. */
public record DiseaseView(String code, String name) {}
