package org.dentary.custody.desk;

import java.time.Instant;
import java.util.List;
import java.util.function.Function;
import org.dentary.custody.chain.Answers.Mark;
import org.dentary.custody.handover.HandOverView;
import org.dentary.platform.table.Page;

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
        Part<HandOverView> toMe,
        Part<HandOverView> fromMe,
        Part<Held> held,
        Part<Held> stored,
        long discrepancies,
        List<Receiver> receivers,
        List<String> zones) {
    /**
     * A page of a list on the desk.
     *
     * @param count how many there are in all
     * @param first where the list begins; null on its first page
     * @param next where it goes on; null on its last page
     */
    public record Part<T>(List<T> items, long count, String first, String next) {
        /** Items on a page. */
        static final int MOST = 500;

        public Part {
            items = List.copyOf(items);
        }

        /**
         * @param asked up to one item more than a page has
         * @param parameter that brings the mark, and the part of the page
         * @param after where the page before ended; null for the first
         */
        static <T> Part<T> of(List<T> asked, long count, String parameter, Mark after, Function<T, Mark> mark) {
            Page<T> page = Page.of(asked, MOST);
            Mark next = page.next(mark);
            return new Part<>(
                    page.items(),
                    count,
                    after == null ? null : "/custody#" + parameter,
                    next == null ? null : "/custody?" + parameter + "=" + next + "#" + parameter);
        }
    }

    /** Where the pages before ended, as links brought it; each may be null. */
    record Marks(Mark toMe, Mark fromMe, Mark held, Mark stored) {
        static final Marks NONE = new Marks(null, null, null, null);

        static Marks of(String toMe, String fromMe, String held, String stored) {
            return new Marks(mark("to-me", toMe), mark("from-me", fromMe), mark("held", held), mark("stored", stored));
        }

        private static Mark mark(String parameter, String text) {
            return Mark.read(parameter, text, Instant::parse);
        }
    }

    /** Somebody or something that can receive. */
    public record Receiver(String code, String name) {}

    public Desk {
        receivers = List.copyOf(receivers);
        zones = List.copyOf(zones);
    }

    /** Time zone of the first station they serve. */
    public String zone() {
        return zones.get(0);
    }

    /** A moment on its clock. */
    public String local(Instant at) {
        return java.time.format.DateTimeFormatter.ofPattern("MMM d, uuuu, HH:mm z", java.util.Locale.US)
                .withZone(java.time.ZoneId.of(zone()))
                .format(at);
    }
}
