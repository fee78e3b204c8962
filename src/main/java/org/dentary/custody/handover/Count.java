package org.dentary.custody.handover;

import java.util.Collection;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * What was expected against what was scanned, by code.
 *
 * @param accepted expected and there, sorted
 * @param missing expected and not there, sorted
 * @param over there and not expected, sorted
 */
record Count(Set<String> accepted, Set<String> missing, Set<String> over) {

    /**
     * Counts scanned codes against expected ones. A box scanned alone stands for everything expected in it; once one of
     * the things in it is scanned as well, they are counted by their own codes. A box all of whose contents were scanned
     * counts as there.
     *
     * @param expected code to the box it lies in, null for none; boxes are codes too
     */
    static Count of(Map<String, String> expected, Collection<String> scanned) {
        Set<String> there = new TreeSet<>(scanned);
        Set<String> accepted = new TreeSet<>(there);
        accepted.retainAll(expected.keySet());
        for (String box : Set.copyOf(accepted)) {
            Set<String> inside = inside(box, expected);
            if (inside.stream().noneMatch(there::contains)) {
                accepted.addAll(inside);
            }
        }
        for (String box : new TreeSet<>(
                expected.values().stream().filter(java.util.Objects::nonNull).toList())) {
            if (expected.containsKey(box) && accepted.containsAll(inside(box, expected))) {
                accepted.add(box);
            }
        }
        Set<String> missing = new TreeSet<>(expected.keySet());
        missing.removeAll(accepted);
        Set<String> over = new TreeSet<>(there);
        over.removeAll(expected.keySet());
        return new Count(accepted, missing, over);
    }

    private static Set<String> inside(String box, Map<String, String> expected) {
        Set<String> inside = new TreeSet<>();
        expected.forEach((code, in) -> {
            if (box.equals(in) && inside.add(code)) {
                inside.addAll(inside(code, expected));
            }
        });
        return inside;
    }
}
