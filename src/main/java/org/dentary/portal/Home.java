package org.dentary.portal;

import java.util.List;

/**
 * A home page.
 *
 * @param greeting who is greeted
 * @param where season and stations in words
 * @param deeds what this role does most, the first as the page's main button
 * @param todo what waits
 * @param facts how things stand
 * @param notices what has to be said, such as low stock; often empty
 */
public record Home(
        String greeting, String where, List<Deed> deeds, List<Tile> todo, List<Tile> facts, List<String> notices) {
    /** A way to start work. */
    public record Deed(String words, String href) {}
}
