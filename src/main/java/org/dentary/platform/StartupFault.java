package org.dentary.platform;

/** A reason why the service cannot start, in one line that says what was found and what to do. */
public final class StartupFault extends RuntimeException {
    public StartupFault(String message) {
        super(message);
    }

    public StartupFault(String message, Throwable cause) {
        super(message, cause);
    }
}
