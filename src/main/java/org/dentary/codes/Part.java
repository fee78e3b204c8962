package org.dentary.codes;

import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What a label of a kit is meant for, written as the ninth character of its code. The table is published and fixed: a
 * letter once printed keeps its meaning for ever, so parts are only ever added. The characters {@code 0 V W Y} are not
 * given out yet.
 */
public enum Part {
    /** The lower jaw, or its tag. */
    JAW('J', "Jaw"),
    /** The retropharyngeal node of the animal's left side; P as in port, for the alphabet has no L. */
    NODE_LEFT('P', "Left node"),
    /** The retropharyngeal node of the animal's right side. */
    NODE_RIGHT('R', "Right node"),
    /** Both nodes of one animal in one container. */
    NODES('N', "Both nodes"),
    /** The obex. */
    OBEX('X', "Obex"),
    /** The tonsil. */
    TONSIL('T', "Tonsil"),
    /** The whole head, or its bag. */
    HEAD('H', "Head"),
    /** The data form. */
    FORM('F', "Form"),
    /** The stub that the hunter or other owner takes away; C as in counterfoil. */
    STUB('C', "Stub"),
    /** A box; K as in packed. */
    BOX('K', "Box"),
    /** An ear or a piece of it. */
    EAR('A', "Ear"),
    /** Blood. */
    BLOOD('D', "Blood"),
    /** Lung. */
    LUNG('G', "Lung"),
    /** Spleen. */
    SPLEEN('Q', "Spleen"),
    /** A submission's papers; M as in manifest. */
    SUBMISSION('M', "Submission"),
    /** An incisor, for ageing by its layers. */
    INCISOR('Z', "Incisor"),
    /** A further piece, named by whoever uses the label. */
    SPARE_1('1', "Spare 1"),
    /** A further piece. */
    SPARE_2('2', "Spare 2"),
    /** A further piece. */
    SPARE_3('3', "Spare 3"),
    /** A further piece. */
    SPARE_4('4', "Spare 4"),
    /** A further piece. */
    SPARE_5('5', "Spare 5"),
    /** A further piece. */
    SPARE_6('6', "Spare 6"),
    /** A further piece. */
    SPARE_7('7', "Spare 7"),
    /** A further piece. */
    SPARE_8('8', "Spare 8"),
    /** A further piece. */
    SPARE_9('9', "Spare 9");

    private static final Map<Character, Part> BY_CHARACTER =
            Stream.of(values()).collect(Collectors.toUnmodifiableMap(part -> part.character, Function.identity()));

    private final char character;
    private final String label;

    Part(char character, String label) {
        this.character = character;
        this.label = label;
    }

    /** The ninth character of a code of this part. */
    public char character() {
        return character;
    }

    /** The part in plain words, as printed on its label. */
    public String label() {
        return label;
    }

    /** The part that a ninth character names, empty where the character has not been given out. */
    public static Optional<Part> of(char character) {
        return Optional.ofNullable(BY_CHARACTER.get(character));
    }
}
