package org.dentary.portal.home;

import java.util.Map;

/**
 * One thing counted on a home page.
 *
 * @param count how many
 * @param words of what
 * @param detail a second line, may be empty
 * @param href where it is dealt with
 * @param waiting whether somebody has to act
 */
public record Tile(long count, String words, String detail, String href, boolean waiting) {
    /** Something that has to be dealt with, if there is any. */
    static Tile todo(long count, String one, String many, String detail, String href) {
        return new Tile(count, count == 1 ? one : many, detail, href, count > 0);
    }

    /** Identity exceptions that another person asked for. */
    static Tile exceptions(Map<String, Long> n) {
        return todo(
                n.get("exceptions"),
                "identity exception to decide",
                "identity exceptions to decide",
                "asked by another; not counted until then",
                "/identity-exceptions");
    }

    /** Something to know. */
    static Tile fact(long count, String one, String many, String detail, String href) {
        return new Tile(count, count == 1 ? one : many, detail, href, false);
    }
}
