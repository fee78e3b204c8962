package org.dentary;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.methods;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaAnnotation;
import com.tngtech.archunit.core.domain.JavaCall;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.domain.properties.HasName;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import com.tngtech.archunit.library.dependencies.SliceAssignment;
import com.tngtech.archunit.library.dependencies.SliceIdentifier;
import jakarta.inject.Inject;
import jakarta.persistence.Entity;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.HttpMethod;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The house of the design, held by machine: each rule is proved once on planted classes that break it. */
class HouseTest {
    private static final String BASE = "org.dentary.";
    private static final List<String> GROUND = List.of("platform", "statistics", "codes", "ledger", "cautions");
    private static final List<String> JOURNEY = List.of(
            "plan", "people", "kit", "animal", "jaw", "specimen", "custody", "submission", "result", "prevalence");
    private static final List<String> TOP = List.of("story", "intake", "calculators", "setup", "portal");

    private static final JavaClasses HOUSE = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("org.dentary");
    private static final JavaClasses PLANTED = new ClassFileImporter().importPackages("planted");

    @TestFactory
    Stream<DynamicTest> theHouseStandsAndEachRuleCanFail() {
        return RULES.stream()
                .flatMap(rule -> Stream.of(
                        DynamicTest.dynamicTest("holds: " + rule.getDescription(), () -> rule.check(HOUSE)),
                        DynamicTest.dynamicTest(
                                "can fail: " + rule.getDescription(),
                                () -> assertTrue(rule.evaluate(PLANTED).hasViolation()))));
    }

    @Test
    void everyPackageHasItsPlace() {
        List<String> known =
                Stream.of(GROUND, JOURNEY, TOP).flatMap(List::stream).toList();
        List<String> strangers = HOUSE.stream()
                .map(type -> room(type))
                .filter(room -> !room.isEmpty() && !known.contains(room))
                .distinct()
                .toList();
        assertTrue(strangers.isEmpty(), "packages without a place in the house: " + strangers);
        assertFalse(HOUSE.stream().findAny().isEmpty());
    }

    /** What it holds, what it does not, and where to start: the three sentences a reader needs before any class. */
    @Test
    void everyPackageSaysWhatItHoldsAndWhereToStart() throws IOException {
        Path sources = Path.of("src", "main", "java");
        try (Stream<Path> files = Files.walk(sources)) {
            List<String> silent = files.filter(file -> file.toString().endsWith(".java"))
                    .map(Path::getParent)
                    .distinct()
                    .filter(folder -> !saysWhereToStart(folder.resolve("package-info.java")))
                    .map(folder -> sources.relativize(folder).toString())
                    .toList();
            assertEquals(List.of(), silent, "packages that do not say where to start reading");
        }
    }

    private static boolean saysWhereToStart(Path info) {
        try {
            return Files.exists(info)
                    && Files.readString(info).replaceAll("\\s+\\*?\\s*", " ").contains("Start reading at {@link");
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }

    private static String room(JavaClass type) {
        String name = type.getPackageName().replaceFirst("^planted\\.", BASE);
        return name.startsWith(BASE) ? name.substring(BASE.length()).split("\\.")[0] : "";
    }

    /** A room knows those to its left on its row, and all of the rows below. */
    static boolean mayUse(String user, String used) {
        if (user.equals(used)) {
            return true;
        }
        List<List<String>> rows = List.of(GROUND, JOURNEY, TOP);
        int from = row(rows, user);
        int to = row(rows, used);
        return to < from
                || to == from && rows.get(to).indexOf(used) < rows.get(from).indexOf(user);
    }

    private static int row(List<List<String>> rows, String room) {
        return rows.indexOf(
                rows.stream().filter(row -> row.contains(room)).findFirst().orElseThrow());
    }

    private static final ArchCondition<JavaClass> USE_ONLY_WHAT_LIES_BELOW_OR_TO_THE_LEFT =
            new ArchCondition<>("use only what lies below or to the left") {
                @Override
                public void check(JavaClass type, ConditionEvents events) {
                    type.getDirectDependenciesFromSelf().forEach(dependency -> {
                        String from = room(type);
                        String to = room(dependency.getTargetClass());
                        if (!from.isEmpty() && !to.isEmpty() && !mayUse(from, to)) {
                            events.add(SimpleConditionEvent.violated(type, dependency.getDescription()));
                        }
                    });
                }
            };

    private static final DescribedPredicate<JavaMethod> ENDPOINTS = new DescribedPredicate<>("endpoint methods") {
        @Override
        public boolean test(JavaMethod method) {
            return method.getAnnotations().stream()
                    .map(JavaAnnotation::getRawType)
                    .anyMatch(type -> type.isAnnotatedWith(HttpMethod.class));
        }
    };

    private static final ArchCondition<JavaMethod> NAME_THEIR_ACT =
            new ArchCondition<>("name the act they perform, or that anybody may") {
                @Override
                public void check(JavaMethod method, ConditionEvents events) {
                    Set<String> say = Set.of(
                            "io.quarkus.security.PermissionsAllowed",
                            "jakarta.annotation.security.PermitAll",
                            "io.quarkus.security.Authenticated");
                    boolean said = Stream.concat(
                                    method.getAnnotations().stream(), method.getOwner().getAnnotations().stream())
                            .anyMatch(annotation ->
                                    say.contains(annotation.getRawType().getName()));
                    if (!said) {
                        events.add(SimpleConditionEvent.violated(method, method.getFullName() + " names no act"));
                    }
                }
            };

    private static final SliceAssignment ROOMS = new SliceAssignment() {
        @Override
        public SliceIdentifier getIdentifierOf(JavaClass type) {
            String room = room(type);
            return room.isEmpty() ? SliceIdentifier.ignore() : SliceIdentifier.of(room);
        }

        @Override
        public String getDescription() {
            return "rooms";
        }
    };

    private static final DescribedPredicate<JavaClass> WRITE_NO_SQL = DescribedPredicate.describe(
            "are neither queries nor writes nor repositories, nor ledger nor platform",
            type -> !type.getSimpleName().matches(".*(Queries|Writes|Repository)")
                    && !List.of("ledger", "platform").contains(room(type)));

    private static final ArchRule NO_NOW = noClasses()
            .should()
            .callMethod(Instant.class, "now")
            .orShould()
            .callMethod(LocalDate.class, "now")
            .orShould()
            .callMethod(OffsetDateTime.class, "now")
            .orShould()
            .callMethod(ZonedDateTime.class, "now")
            .orShould()
            .callMethod(System.class, "currentTimeMillis")
            .as("nobody asks for the time without a Clock");

    private static final List<ArchRule> RULES = List.of(
            classes().should(USE_ONLY_WHAT_LIES_BELOW_OR_TO_THE_LEFT),
            classes()
                    .that()
                    .areAnnotatedWith(Entity.class)
                    .should()
                    .notBePublic()
                    .as("entities are package-private"),
            methods().that(ENDPOINTS).should().bePublic().as("endpoint methods are public"),
            methods().that(ENDPOINTS).should(NAME_THEIR_ACT),
            methods()
                    .that()
                    .areAnnotatedWith(Transactional.class)
                    .should()
                    .beDeclaredInClassesThat()
                    .haveSimpleNameEndingWith("Service")
                    .as("transactions begin in services"),
            NO_NOW,
            noClasses()
                    .should()
                    .dependOnClassesThat()
                    .areAssignableTo(Inject.class)
                    .as("beans get what they need by constructor"),
            noClasses()
                    .that()
                    .haveSimpleNameNotEndingWith("Main")
                    .should()
                    .accessField(System.class, "out")
                    .as("nobody prints to System.out"),
            noClasses()
                    .that()
                    .haveSimpleNameEndingWith("Rules")
                    .or()
                    .resideInAPackage("..statistics..")
                    .should()
                    .dependOnClassesThat(DescribedPredicate.describe(
                            "the framework, the database or the clock",
                            (JavaClass type) -> type.getPackageName().startsWith("io.quarkus")
                                    || type.getPackageName().startsWith("jakarta.persistence")
                                    || type.getPackageName().startsWith("jakarta.enterprise")
                                    || type.isEquivalentTo(Clock.class)))
                    .as("rules and statistics are pure"),
            noClasses()
                    .that(WRITE_NO_SQL)
                    .should()
                    .callMethodWhere(JavaCall.Predicates.target(HasName.Predicates.nameMatching("createNative.*Query")))
                    .as("native SQL is written in queries, writes and repositories, in the ledger and the platform"),
            slices().assignedFrom(ROOMS).should().beFreeOfCycles().as("no two rooms use each other"));
}
