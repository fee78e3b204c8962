package org.dentary.custody.desk;

import java.util.List;
import org.dentary.custody.handover.HandOverView;

/**
 * What lies on somebody's desk.
 *
 * @param toMe offers to them and to whom they act for, the longest waiting first
 * @param fromMe their own offers that wait, the longest waiting first
 * @param held in hand
 * @param stored in the stores that they may use
 * @param discrepancies how many open ones they may settle
 * @param receivers codes that a hand-over can go to, with what people call them
 * @param zones time zones of the stations, those they serve first
 */
public record Desk(
        List<HandOverView> toMe,
        List<HandOverView> fromMe,
        List<Held> held,
        List<Held> stored,
        int discrepancies,
        List<Receiver> receivers,
        List<String> zones) {
    /** Somebody or something that can receive. */
    public record Receiver(String code, String name) {}

    public Desk {
        toMe = List.copyOf(toMe);
        fromMe = List.copyOf(fromMe);
        held = List.copyOf(held);
        stored = List.copyOf(stored);
        receivers = List.copyOf(receivers);
        zones = List.copyOf(zones);
    }

    /** Time zone of the first station they serve. */
    public String zone() {
        return zones.get(0);
    }

    /** A moment on its clock. */
    public String local(java.time.Instant at) {
        return java.time.format.DateTimeFormatter.ofPattern("MMM d, uuuu, HH:mm z", java.util.Locale.US)
                .withZone(java.time.ZoneId.of(zone()))
                .format(at);
    }
}
