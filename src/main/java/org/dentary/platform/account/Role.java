package org.dentary.platform.account;

/** The six roles; an account has exactly one. */
public enum Role {
    SAMPLER("Sampler"),
    LIAISON("Lab liaison"),
    EPIDEMIOLOGIST("Epidemiologist"),
    COORDINATOR("Coordinator"),
    NOTIFIER("Notifier"),
    AUDITOR("Auditor");

    private final String words;

    Role(String words) {
        this.words = words;
    }

    /** The role as people say it. */
    public String words() {
        return words;
    }
}
