package org.dentary.story;

import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Named;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.dentary.people.PeopleService;
import org.dentary.people.PersonView;
import org.dentary.plan.DiseaseView;
import org.dentary.plan.LaboratoryView;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.plan.StationView;
import org.dentary.plan.TestMethodView;
import org.dentary.plan.UnitView;

/**
 * What people call what a row holds as a code, for templates: {@code {cdi:called.station(code)}}. Each list is read once a
 * page. A code that none has stays as it is, UNKNOWN is "Unknown"; an account without a person is called by its name.
 */
@Named("called")
@RequestScoped
public class Called {
    private final PlanService plan;
    private final PeopleService people;
    private final Map<String, Map<String, String>> lists = new HashMap<>();

    Called(PlanService plan, PeopleService people) {
        this.plan = plan;
        this.people = people;
    }

    public String station(String code) {
        return name(code, "station", () -> names(plan.stations(), StationView::code, StationView::name));
    }

    public String unit(String code) {
        return name(code, "unit", () -> names(plan.units(), UnitView::code, UnitView::name));
    }

    public String season(String code) {
        return name(code, "season", () -> names(plan.seasons(), SeasonView::code, SeasonView::name));
    }

    public String laboratory(String code) {
        return name(code, "laboratory", () -> names(plan.laboratories(), LaboratoryView::code, LaboratoryView::name));
    }

    public String disease(String code) {
        return name(code, "disease", () -> names(plan.diseases(), DiseaseView::code, DiseaseView::name));
    }

    public String method(String code) {
        return name(code, "method", () -> names(plan.methods(), TestMethodView::code, TestMethodView::name));
    }

    public String person(String code) {
        return name(code, "person", () -> names(people.persons(), PersonView::code, PersonView::name));
    }

    /** The value of a field of the line list as people say it; "nothing" for an empty one. */
    public String value(String field, String code) {
        return switch (field) {
            case "managementUnit" -> unit(code);
            case "station" -> station(code);
            default -> code.isEmpty() ? "nothing" : Words.asWords(code);
        };
    }

    private String name(String code, String list, Supplier<Map<String, String>> read) {
        if (code == null) {
            return null;
        }
        String name = lists.computeIfAbsent(list, any -> read.get()).get(code);
        return name != null ? name : code.equals("UNKNOWN") ? Words.asWords(code) : code;
    }

    private static <T> Map<String, String> names(
            Collection<T> all, Function<T, String> code, Function<T, String> name) {
        return all.stream().collect(Collectors.toMap(code, name, (one, same) -> one));
    }
}
