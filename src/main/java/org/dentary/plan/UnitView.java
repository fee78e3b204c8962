package org.dentary.plan;

/**
 * A management unit.
 *
 * @param region region code, or null
 * @param boundaryVersion which edition of its boundary is on record, or null if none is
 */
public record UnitView(String code, String name, String region, String boundaryVersion) {}
