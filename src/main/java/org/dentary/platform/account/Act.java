package org.dentary.platform.account;

/** What can be done, one word each; a route names the act it performs with {@code @PermissionsAllowed(Act.X)}. */
public final class Act {
    /** Age a jaw without storing, calculate, look up a code, read cautions and set-up lists. */
    public static final String READ_COMMON = "read-common";

    public static final String KIT_ISSUE = "kit-issue";
    public static final String LABEL_PRINT = "label-print";
    public static final String INTAKE = "intake";
    public static final String SPECIMEN_WRITE = "specimen-write";
    public static final String CUSTODY_WRITE = "custody-write";
    public static final String ANIMAL_READ = "animal-read";
    /** Practice rounds in reading jaws: one's own. */
    public static final String PRACTICE = "practice";

    /** The jaws by which readers are measured, with their classes. */
    public static final String REFERENCE_PANEL_READ = "reference-panel-read";

    public static final String JAW_PHOTO_READ = "jaw-photo-read";
    /** Ask that two kits be one animal, or that a label be re-attributed; another person confirms. */
    public static final String PUT_RIGHT_ASK = "put-right-ask";

    public static final String PUT_RIGHT = "put-right";
    public static final String DISCREPANCY = "discrepancy";
    /** Vouch for a mislabeled specimen that cannot be collected again. */
    public static final String IDENTITY_EXCEPTION_ASK = "identity-exception-ask";

    /** Grant or refuse what another person vouched for. */
    public static final String IDENTITY_EXCEPTION_DECIDE = "identity-exception-decide";

    public static final String READER_AGREEMENT = "reader-agreement";
    public static final String SUBMISSION_READ = "submission-read";
    public static final String SUBMISSION_WRITE = "submission-write";
    public static final String RESULT_READ = "result-read";
    public static final String RESULT_WRITE = "result-write";
    /** See outcomes that are not released yet. */
    public static final String DERIVED_OUTCOME = "derived-outcome";

    /** Take the steps that a first detection asks for. */
    public static final String INCIDENT_WRITE = "incident-write";

    /** See how often tissue could not be read; a sampler sees their own. */
    public static final String UNSUITABLE_READ = "unsuitable-read";

    public static final String RELEASE = "release";
    public static final String REPORT_READ = "report-read";
    public static final String DATA_CUT = "data-cut";
    public static final String CONTACT_WRITE = "contact-write";
    public static final String CONTACT_READ = "contact-read";
    /** See who is to be told what was released, and what was tried. */
    public static final String NOTIFICATION_READ = "notification-read";
    /** Tell people, and find a caller's animal. */
    public static final String NOTIFY = "notify";

    public static final String LEDGER_READ = "ledger-read";
    public static final String CHECKPOINT = "checkpoint";
    /** Erase a photograph that is evidence of a custody event. */
    public static final String EVIDENCE_ERASE = "evidence-erase";

    public static final String SET_UP = "set-up";
    public static final String AUDIT_READ = "audit-read";
    /** Sign out, change one's own password, acknowledge the protocol. */
    public static final String OWN_ACCOUNT = "own-account";

    private Act() {}
}
