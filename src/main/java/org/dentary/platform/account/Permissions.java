package org.dentary.platform.account;

import static org.dentary.platform.account.Role.AUDITOR;
import static org.dentary.platform.account.Role.COORDINATOR;
import static org.dentary.platform.account.Role.EPIDEMIOLOGIST;
import static org.dentary.platform.account.Role.LIAISON;
import static org.dentary.platform.account.Role.NOTIFIER;
import static org.dentary.platform.account.Role.SAMPLER;

import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * Who may do what. What is not in this table is allowed to nobody; {@code docs/permissions.md} is written from it. Limits
 * within an act (own station, released outcomes only) are kept by the room that holds the act.
 */
public final class Permissions {
    private static final Map<String, Set<Role>> TABLE = table();

    private Permissions() {}

    private static Map<String, Set<Role>> table() {
        Map<String, Set<Role>> t = new LinkedHashMap<>();
        Set<Role> all = EnumSet.allOf(Role.class);
        t.put(Act.READ_COMMON, all);
        t.put(Act.OWN_ACCOUNT, all);
        t.put(Act.KIT_ISSUE, EnumSet.of(COORDINATOR));
        t.put(Act.LABEL_PRINT, EnumSet.of(SAMPLER, COORDINATOR));
        t.put(Act.INTAKE, EnumSet.of(SAMPLER, COORDINATOR));
        t.put(Act.SPECIMEN_WRITE, EnumSet.of(SAMPLER, LIAISON, COORDINATOR));
        t.put(Act.CUSTODY_WRITE, EnumSet.of(SAMPLER, LIAISON, COORDINATOR));
        t.put(Act.ANIMAL_READ, EnumSet.of(SAMPLER, LIAISON, EPIDEMIOLOGIST, COORDINATOR, NOTIFIER, AUDITOR));
        t.put(Act.JAW_PHOTO_READ, EnumSet.of(SAMPLER, EPIDEMIOLOGIST, COORDINATOR, AUDITOR));
        t.put(Act.PUT_RIGHT_ASK, EnumSet.of(SAMPLER, LIAISON, EPIDEMIOLOGIST, COORDINATOR));
        t.put(Act.PUT_RIGHT, EnumSet.of(EPIDEMIOLOGIST, COORDINATOR));
        t.put(Act.DISCREPANCY, EnumSet.of(SAMPLER, LIAISON, COORDINATOR));
        t.put(Act.IDENTITY_EXCEPTION_ASK, EnumSet.of(LIAISON, COORDINATOR));
        t.put(Act.IDENTITY_EXCEPTION_DECIDE, EnumSet.of(EPIDEMIOLOGIST, COORDINATOR));
        t.put(Act.READER_AGREEMENT, EnumSet.of(SAMPLER, EPIDEMIOLOGIST, COORDINATOR, AUDITOR));
        t.put(Act.PRACTICE, EnumSet.of(SAMPLER, EPIDEMIOLOGIST, COORDINATOR));
        t.put(Act.REFERENCE_PANEL_READ, EnumSet.of(EPIDEMIOLOGIST, COORDINATOR, AUDITOR));
        t.put(Act.SUBMISSION_READ, EnumSet.of(SAMPLER, LIAISON, EPIDEMIOLOGIST, COORDINATOR, AUDITOR));
        t.put(Act.SUBMISSION_WRITE, EnumSet.of(LIAISON, COORDINATOR));
        t.put(Act.RESULT_READ, EnumSet.of(LIAISON, COORDINATOR, AUDITOR));
        t.put(Act.RESULT_WRITE, EnumSet.of(LIAISON, COORDINATOR));
        t.put(Act.DERIVED_OUTCOME, EnumSet.of(LIAISON, COORDINATOR, NOTIFIER, AUDITOR));
        t.put(Act.INCIDENT_WRITE, EnumSet.of(LIAISON, COORDINATOR));
        t.put(Act.UNSUITABLE_READ, EnumSet.of(SAMPLER, LIAISON, EPIDEMIOLOGIST, COORDINATOR, AUDITOR));
        t.put(Act.RELEASE, EnumSet.of(COORDINATOR));
        t.put(Act.REPORT_READ, EnumSet.of(LIAISON, EPIDEMIOLOGIST, COORDINATOR, AUDITOR));
        t.put(Act.DATA_CUT, EnumSet.of(EPIDEMIOLOGIST, COORDINATOR));
        t.put(Act.CONTACT_WRITE, EnumSet.of(SAMPLER, COORDINATOR, NOTIFIER));
        t.put(Act.CONTACT_READ, EnumSet.of(SAMPLER, COORDINATOR, NOTIFIER));
        t.put(Act.NOTIFICATION_READ, EnumSet.of(COORDINATOR, NOTIFIER, AUDITOR));
        t.put(Act.NOTIFY, EnumSet.of(COORDINATOR, NOTIFIER));
        t.put(Act.LEDGER_READ, EnumSet.of(LIAISON, EPIDEMIOLOGIST, COORDINATOR, AUDITOR));
        t.put(Act.CHECKPOINT, EnumSet.of(COORDINATOR, AUDITOR));
        t.put(Act.EVIDENCE_ERASE, EnumSet.of(COORDINATOR));
        t.put(Act.SET_UP, EnumSet.of(COORDINATOR));
        t.put(Act.AUDIT_READ, EnumSet.of(AUDITOR));
        return t;
    }

    /** The whole table in reading order: act to the roles that may do it. */
    public static Map<String, Set<Role>> all() {
        return java.util.Collections.unmodifiableMap(TABLE);
    }

    /** Whether the role may do the act; an unknown act is allowed to nobody. */
    public static boolean allows(Role role, String act) {
        return TABLE.getOrDefault(act, Set.of()).contains(role);
    }

    /** The acts that a role may do, sorted. */
    public static Set<String> of(Role role) {
        Set<String> acts = new TreeSet<>();
        TABLE.forEach((act, roles) -> {
            if (roles.contains(role)) {
                acts.add(act);
            }
        });
        return acts;
    }
}
