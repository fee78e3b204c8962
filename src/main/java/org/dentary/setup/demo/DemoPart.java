package org.dentary.setup.demo;

import java.nio.file.Path;

/**
 * One part of the demo. {@link DemoLoader} finds every bean of this type and loads those that are not loaded yet, one after
 * another by {@link #order()}; each runs in a request of its own, as nobody until it becomes an account of the demo. A part
 * that was interrupted is loaded again, so loading must be repeatable.
 */
interface DemoPart {
    /** Parts with smaller numbers come first: 10 is the set-up, 90 closes the past seasons; what happened in the seasons
     * lies between. */
    int order();

    /** What it loads, for the log. */
    String words();

    /** Whether all of it is there. */
    boolean isLoaded();

    /**
     * Loads it, or what is missing of it.
     *
     * @param demoData the folder {@code demo-data}
     */
    void load(Path demoData);
}
