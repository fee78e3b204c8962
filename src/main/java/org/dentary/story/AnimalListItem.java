package org.dentary.story;

import java.time.Instant;
import java.time.LocalDate;

/**
 * An animal in a list; its outcome is the released one for the plan's first disease.
 *
 * @param managementUnit code or {@code UNKNOWN}
 * @param exclusion why it is counted nowhere; empty where it is
 */
public record AnimalListItem(
        String kit,
        String season,
        String station,
        String managementUnit,
        String species,
        String sex,
        String ageClass,
        boolean ageDisputed,
        LocalDate diedOn,
        String mortalitySource,
        String jawStatus,
        int specimens,
        String outcome,
        String exclusion,
        Instant recordedAt) {}
