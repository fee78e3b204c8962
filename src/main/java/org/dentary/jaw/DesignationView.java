package org.dentary.jaw;

import java.time.Instant;
import java.util.UUID;

/**
 * A decision which age stands; the newest rules.
 *
 * @param reading the reading whose class it is, or null
 */
public record DesignationView(String kit, UUID reading, String ageClass, String reason, String byActor, Instant at) {}
