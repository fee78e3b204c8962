package org.dentary.portal.home;

import java.util.List;
import org.dentary.prevalence.detection.TakeNext;

/**
 * A home page.
 *
 * @param greeting who is greeted
 * @param where season and stations in words
 * @param deeds what this role does most, the first as the page's main button
 * @param todo what waits
 * @param facts how things stand
 * @param notices what has to be said, such as low stock; often empty
 * @param season season of what to take next, or null
 * @param takeNext units short of their target and what to take there; empty for those who take in no animals
 * @param takeNextMore how many units the list leaves out
 * @param takeNextFreshness how old that list is, in words, or null
 */
public record Home(
        String greeting,
        String where,
        List<Deed> deeds,
        List<Tile> todo,
        List<Tile> facts,
        List<Notice> notices,
        String season,
        List<TakeNext> takeNext,
        int takeNextMore,
        String takeNextFreshness) {
    /** So many units are listed at most; the file and the report have all. */
    private static final int MOST_UNITS = 25;

    Home(String greeting, String where, List<Deed> deeds, List<Tile> todo, List<Tile> facts, List<Notice> notices) {
        this(greeting, where, deeds, todo, facts, notices, null, List.of(), 0, null);
    }

    /** This page with what to take next in a season. */
    Home taking(String season, List<TakeNext> takeNext, String freshness) {
        List<TakeNext> first = takeNext.subList(0, Math.min(MOST_UNITS, takeNext.size()));
        int more = takeNext.size() - first.size();
        return new Home(greeting, where, deeds, todo, facts, notices, season, first, more, freshness);
    }

    /**
     * Something that has to be said, with the way to put it right.
     *
     * @param href where to, or null
     * @param link what stands on the way there
     */
    public record Notice(String words, String href, String link) {}

    /** A way to start work. */
    public record Deed(String words, String href) {}
}
