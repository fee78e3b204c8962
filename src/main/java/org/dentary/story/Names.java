package org.dentary.story;

import io.quarkus.qute.TemplateData;
import java.util.Collection;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.dentary.people.Custodian;
import org.dentary.people.PeopleService;

/** What people, parties and stores are called on a page; a code that is no longer on a list stands for itself. */
@TemplateData
public final class Names {
    private final Map<String, Custodian> known;

    private Names(Map<String, Custodian> known) {
        this.known = known;
    }

    /** The names in an animal's story, in one query. */
    static Names in(AnimalStory story, PeopleService people) {
        Collection<String> codes = Stream.of(
                        story.timeline().stream().map(Happening::byActor),
                        story.jawReadings().stream().map(reading -> reading.examiner()),
                        story.designatedAges().stream().map(age -> age.byActor()),
                        story.specimens().stream().map(SpecimenStory::custodian))
                .flatMap(each -> each)
                .filter(Objects::nonNull)
                .collect(Collectors.toSet());
        return new Names(people.custodians(codes));
    }

    /** The name that goes with a code. */
    public String of(String code) {
        Custodian custodian = known.get(code);
        return custodian == null ? code : custodian.name();
    }
}
