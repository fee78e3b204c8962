package org.dentary.calculators;

import java.util.List;

/** One calculator: what it asks, what it answers. Its page, its drawing and its text to copy are made from these alone. */
public interface Calculator {
    /** What it is called and where it stands under the roof. */
    Entry entry();

    /** What it asks, in order. */
    List<Field> fields();

    /**
     * The answer to what is asked.
     *
     * @throws org.dentary.platform.problem.InvalidInput when a value is missing or malformed
     * @throws org.dentary.statistics.OutOfDomain when a value lies outside what the function is defined for
     */
    Answer answer(Asked asked);

    /** The parts of the roof, in order. */
    enum Part {
        HOW_COMMON("How common is it?"),
        DIFFERENT("Is it different?"),
        RULED_OUT("What can be ruled out?");

        private final String words;

        Part(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /**
     * @param place order under the roof
     * @param name last part of its address
     * @param title what it is called
     * @param purpose one sentence: what it is for
     * @param example query of an example to open, invented
     */
    record Entry(Part part, int place, String name, String title, String purpose, String example) {}
}
