package org.dentary.result.notification;

/** How somebody was, or was to be, told. */
public enum Channel {
    PHONE,
    IN_PERSON,
    LETTER,
    MESSAGE
}
