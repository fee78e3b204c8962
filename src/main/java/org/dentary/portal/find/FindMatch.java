package org.dentary.portal.find;

/**
 * Something that was found.
 *
 * @param kind {@code ANIMAL}, {@code BOX}, {@code SUBMISSION}, {@code BLOCK} or {@code LABEL} (nothing recorded under it
 *     yet)
 * @param key its code or id
 * @param words what it is and why it was found
 * @param href its page
 */
public record FindMatch(String kind, String key, String words, String href) {
    static FindMatch of(String kind, String key, String words) {
        String room = switch (kind) {
            case "ANIMAL" -> "/animals/";
            case "BOX" -> "/boxes/";
            case "SUBMISSION" -> "/submissions/";
            case "BLOCK" -> "/kits/";
            default -> "/kits/labels/";
        };
        return new FindMatch(kind, key, words, room + key);
    }
}
