package org.dentary.ledger;

/**
 * One thing that is not as it was recorded.
 *
 * @param where the event or checkpoint and its position, for people
 * @param position the position at which it was found, from 1; 0 where there is none
 * @param id the event's or checkpoint's id as found, or null
 * @param what which part differs
 * @param expected what it should be
 * @param found what it is
 */
public record Difference(String where, int position, String id, String what, String expected, String found) {

    static Difference inEvent(LedgerEvent event, int position, String what, Object expected, Object found) {
        String where = "event " + event.id() + " at position " + position + " of chain " + event.chain();
        return new Difference(
                where, position, String.valueOf(event.id()), what, String.valueOf(expected), String.valueOf(found));
    }

    @Override
    public String toString() {
        return where + ": " + what + ": expected " + expected + ", found " + found;
    }
}
