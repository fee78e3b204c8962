package org.dentary.plan;

/** A part of the country whose dates and rules differ from another's. */
public record RegionView(String code, String name) {}
