package org.dentary.prevalence.table;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.dentary.prevalence.question.Dimension;

/**
 * What staff must mind in a cell. Nothing is hidden from them: a small cell is flagged, and what goes to the public is for
 * whoever publishes to hold back.
 */
public enum CellFlag {
    NOT_SAMPLED("", "not sampled"),
    /** Below 5 the interval says little (the calculators' own bound). */
    VERY_FEW_COUNTED("††", "fewer than 5 counted"),
    /** NCHS Series 2 No. 175 (Parker et al. 2017); the bound from memory. */
    FEW_COUNTED("†", "fewer than 30 counted"),
    FEW_DETECTED("‡", "fewer than 5 detected"),
    /** A place, with another grouping and very few animals: they could point to a person. Common practice, no source. */
    MAY_IDENTIFY("§", "so few that they could point to a person: not for publication");

    private static final int FEW = 30;
    private static final int VERY_FEW = 5;

    private final String mark;
    private final String words;

    CellFlag(String mark, String words) {
        this.mark = mark;
        this.words = words;
    }

    /** The flags of a cell of a report broken down by these dimensions. */
    public static List<String> of(List<Dimension> by, int counted, int detected, int pending) {
        List<CellFlag> flags = new ArrayList<>();
        if (counted == 0) {
            flags.add(NOT_SAMPLED);
        } else if (counted < VERY_FEW) {
            flags.add(VERY_FEW_COUNTED);
        } else if (counted < FEW) {
            flags.add(FEW_COUNTED);
        }
        if (detected > 0 && detected < VERY_FEW) {
            flags.add(FEW_DETECTED);
        }
        boolean place = by.contains(Dimension.MANAGEMENT_UNIT) || by.contains(Dimension.STATION);
        int animals = counted + pending;
        if (place && by.size() > 1 && animals > 0 && animals < VERY_FEW) {
            flags.add(MAY_IDENTIFY);
        }
        return flags.stream().map(Enum::name).toList();
    }

    /** The marks of flags by their names, such as "† ‡"; a flag that this release does not know is told by its name. */
    static String marks(List<String> names) {
        return told(names, flag -> flag.mark);
    }

    /** Flags by their names, each as mark and words. */
    public static String told(List<String> names) {
        return told(names, flag -> flag.mark + " " + flag.words);
    }

    /** Where a flag stands in a legend; one that this release does not know comes last. */
    static int order(String name) {
        return Arrays.stream(values())
                .filter(flag -> flag.name().equals(name))
                .map(Enum::ordinal)
                .findFirst()
                .orElse(values().length);
    }

    private static String told(List<String> names, Function<CellFlag, String> how) {
        return names.stream()
                .filter(name -> !name.equals(NOT_SAMPLED.name()))
                .map(name -> Arrays.stream(values())
                        .filter(flag -> flag.name().equals(name))
                        .findFirst()
                        .map(how)
                        .orElse(name))
                .collect(Collectors.joining(", "));
    }
}
