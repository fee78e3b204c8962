package org.dentary.setup.list;

/**
 * One column of a list.
 *
 * @param name as in the file's header and in the database
 * @param meaning what it says, for the page and the documentation
 * @param required whether a cell must not be empty
 * @param byDefault what an empty or missing cell of a new row means
 * @param cell what it may hold
 */
public record Column(String name, String meaning, boolean required, String byDefault, Cell cell) {
    static Column must(String name, Cell cell, String meaning) {
        return new Column(name, meaning, true, "", cell);
    }

    static Column may(String name, Cell cell, String meaning) {
        return new Column(name, meaning, false, "", cell);
    }

    static Column may(String name, Cell cell, String meaning, String byDefault) {
        return new Column(name, meaning, false, byDefault, cell);
    }

    /** The allowed values as a sentence part. */
    public String allowed() {
        return cell.words();
    }
}
