package org.dentary.result.outcome;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What is recorded of animals that are judged together. Kits linked as one animal share a root, by which the maps are asked.
 *
 * @param members every kit of those animals
 * @param releases detections that are released, by the kit of each
 * @param released root and disease of each of them, a blank between
 */
record Recorded(
        List<OutcomeQueries.Member> members,
        Map<String, List<OutcomeQueries.Tissue>> tissues,
        Map<String, List<OutcomeQueries.Finding>> findings,
        Map<String, List<OutcomeQueries.Identity>> identities,
        List<OutcomeQueries.Released> releases,
        Set<String> released) {
    /** Reads it in as many queries as there are kinds; for no known kit it is empty. */
    static Recorded of(List<String> kits, OutcomeQueries queries) {
        List<OutcomeQueries.Member> members = queries.members(kits);
        if (members.isEmpty()) {
            return new Recorded(members, Map.of(), Map.of(), Map.of(), List.of(), Set.of());
        }
        List<String> every = kits(members);
        Map<String, String> rootOf = members.stream()
                .collect(Collectors.toMap(OutcomeQueries.Member::kit, OutcomeQueries.Member::root, (a, b) -> a));
        List<OutcomeQueries.Released> releases = queries.released(every).stream()
                .filter(r -> r.outcome().equals(Outcome.DETECTED.name()))
                .toList();
        return new Recorded(
                members,
                queries.tissues(every).stream().collect(Collectors.groupingBy(t -> rootOf.get(t.kit()))),
                queries.findings(every).stream().collect(Collectors.groupingBy(f -> rootOf.get(f.kit()))),
                queries.identities(every).stream().collect(Collectors.groupingBy(i -> rootOf.get(i.kit()))),
                releases,
                releases.stream()
                        .map(r -> rootOf.get(r.kit()) + " " + r.disease())
                        .collect(Collectors.toSet()));
    }

    /** Kits of that animal under which its detection of the disease is released. */
    List<String> releasedUnder(String root, String disease) {
        Set<String> own = members.stream()
                .filter(member -> member.root().equals(root))
                .map(OutcomeQueries.Member::kit)
                .collect(Collectors.toSet());
        return releases.stream()
                .filter(r -> r.disease().equals(disease) && own.contains(r.kit()))
                .map(OutcomeQueries.Released::kit)
                .toList();
    }

    /** Every kit of the animals. */
    List<String> kits() {
        return kits(members);
    }

    boolean isReleased(String root, String disease) {
        return released.contains(root + " " + disease);
    }

    /**
     * What the findings say of each disease. While one of them is withheld, a disease that nothing was reported of reads as
     * before the report: that its turn had come would tell that another's finding is there.
     */
    Map<String, Derived> said(String root, List<String> diseases, PlanFacts plan) {
        List<OutcomeQueries.Tissue> of = tissues.getOrDefault(root, List.of());
        Identities settled = Identities.of(identities.getOrDefault(root, List.of()));
        List<OutcomeQueries.Finding> reported = findings.getOrDefault(root, List.of());
        Map<String, List<OutcomeQueries.Finding>> byDisease =
                reported.stream().collect(Collectors.groupingBy(OutcomeQueries.Finding::disease));
        // A correction may name another method, and with it another disease: what it replaces stands for neither.
        Set<String> replaced = reported.stream()
                .map(OutcomeQueries.Finding::corrects)
                .filter(Objects::nonNull)
                .collect(Collectors.toSet());
        Map<String, Derived> said = new LinkedHashMap<>();
        for (String disease : diseases) {
            List<OutcomeQueries.Finding> standing = byDisease.getOrDefault(disease, List.of()).stream()
                    .filter(finding -> !replaced.contains(finding.id()))
                    .toList();
            said.put(disease, derived(standing, of, true, settled, plan));
        }
        boolean withheld = said.entrySet().stream()
                .anyMatch(each -> each.getValue().outcome().shown(isReleased(root, each.getKey()))
                        != each.getValue().outcome());
        if (withheld) {
            diseases.stream()
                    .filter(disease -> !byDisease.containsKey(disease))
                    .forEach(disease -> said.put(disease, derived(List.of(), of, false, settled, plan)));
        }
        return said;
    }

    private static Derived derived(
            List<OutcomeQueries.Finding> rows,
            List<OutcomeQueries.Tissue> tissues,
            boolean reported,
            Identities identities,
            PlanFacts plan) {
        Map<String, List<OutcomeQueries.Finding>> byId = new LinkedHashMap<>();
        rows.forEach(
                row -> byId.computeIfAbsent(row.id(), id -> new ArrayList<>()).add(row));
        List<TestFact> facts = byId.values().stream()
                .map(same -> TestFact.of(same, plan.adjunctsThatCount()))
                .toList();
        List<TissueFact> tissue = tissues.stream()
                .map(t -> new TissueFact(
                        t.code(),
                        t.parent(),
                        t.archived(),
                        t.orders().intValue(),
                        reported ? t.reports().intValue() : 0,
                        t.tissue().endsWith("_NODE"),
                        t.tissue().equals("OBEX")))
                .toList();
        Derived derived =
                OutcomeRules.derive(identities.attributable(facts), identities.attributableTissue(tissue), plan);
        return identities.told(derived, facts);
    }

    private static List<String> kits(List<OutcomeQueries.Member> members) {
        return members.stream().map(OutcomeQueries.Member::kit).toList();
    }
}
