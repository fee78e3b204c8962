package org.dentary.result.notification;

/** What came of a try. */
public enum AttemptResult {
    /** The person was told and understood. */
    REACHED,
    /** A letter or message left; nobody knows yet whether it was read. */
    SENT,
    NO_ANSWER,
    /** A call-back was asked for, without a word about the result. */
    CALL_BACK_ASKED,
    WRONG_ADDRESS,
    /** What was sent came back. */
    RETURNED,
    /** The person does not want to be told. */
    NOT_WISHED,
    /** Every way was tried; nothing more is done. */
    UNREACHABLE
}
