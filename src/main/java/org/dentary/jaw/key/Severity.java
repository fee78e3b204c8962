package org.dentary.jaw.key;

/**
 * What a contradiction does to a reading. {@code REFUSE}: the class cannot stand, the reading is kept as given and disputed.
 * {@code CONFIRM}: a second look is asked for and the class stays. {@code FLAG}: the class stays and the reading is reviewed.
 */
public enum Severity {
    REFUSE,
    CONFIRM,
    FLAG
}
