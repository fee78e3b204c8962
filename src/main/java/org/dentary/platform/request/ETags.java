package org.dentary.platform.request;

/** Entity tags from version numbers (RFC 9110, section 8.8.3). */
public final class ETags {
    private ETags() {}

    /** The strong tag of a version, with its quotes. */
    public static String of(int version) {
        return "\"" + version + "\"";
    }

    /** Whether an If-Match header names this version; {@code *} names any. */
    public static boolean matches(String ifMatch, int version) {
        for (String tag : ifMatch.split(",")) {
            String trimmed = tag.trim();
            if (trimmed.equals("*") || trimmed.equals(of(version))) {
                return true;
            }
        }
        return false;
    }
}
