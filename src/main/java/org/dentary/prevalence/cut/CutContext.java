package org.dentary.prevalence.cut;

import java.time.Instant;
import java.util.List;

/**
 * What was still on its way when a cut was made: a station that has not sent for days, a laboratory that owes results.
 *
 * @param stations in set-up order; those without an animal of the season too
 * @param laboratories most pending first; {@code laboratory} null: tissue that was not sent yet
 */
public record CutContext(List<StationSync> stations, List<LaboratoryPending> laboratories) {
    public CutContext {
        stations = stations == null ? List.of() : List.copyOf(stations);
        laboratories = laboratories == null ? List.of() : List.copyOf(laboratories);
    }

    /** A station, when its last animal of the season reached the service (null: none did), and how many there are. */
    public record StationSync(String station, String name, Instant lastReceivedAt, Integer animals) {}

    /**
     * Animals pending by the laboratory their tissue was last sent to, findings not released yet among them; what was sent on
     * after such a finding counts where it was before.
     *
     * @param oldestSentAt when the longest waiting of them was sent; null: not sent
     */
    public record LaboratoryPending(String laboratory, String name, Integer animals, Instant oldestSentAt) {}
}
