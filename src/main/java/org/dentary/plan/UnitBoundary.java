package org.dentary.plan;

/**
 * Where a management unit lies.
 *
 * @param boundary GeoJSON Polygon or MultiPolygon (RFC 7946: WGS 84, longitude first)
 */
public record UnitBoundary(String unit, String boundary, String boundaryVersion) {}
