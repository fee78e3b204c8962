package org.dentary.setup.demo;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.dentary.people.PeopleService;
import org.dentary.plan.PlanService;
import org.dentary.plan.SeasonView;
import org.dentary.plan.season.SeasonStateService;
import org.dentary.platform.account.AccountService;
import org.dentary.setup.SetUpImportService;
import org.dentary.setup.list.SetUpList;

/** The demo's agency: every list from its file, its seasons open, the protocol acknowledged. */
@ApplicationScoped
public class DemoSetUp implements DemoPart {
    private final SetUpImportService imports;
    private final PlanService plan;
    private final SeasonStateService states;
    private final PeopleService people;
    private final AccountService accounts;
    private final Clock clock;

    DemoSetUp(
            SetUpImportService imports,
            PlanService plan,
            SeasonStateService states,
            PeopleService people,
            AccountService accounts,
            Clock clock) {
        this.imports = imports;
        this.plan = plan;
        this.states = states;
        this.people = people;
        this.accounts = accounts;
        this.clock = clock;
    }

    @Override
    public int order() {
        return 10;
    }

    @Override
    public String words() {
        return "the agency's set-up";
    }

    /** Opening the running season is the last step, so it says that all before it is there. */
    @Override
    public boolean isLoaded() {
        List<SeasonView> seasons = plan.seasons();
        return !seasons.isEmpty() && running(seasons, clock).state().equals("OPEN");
    }

    @Override
    public void load(Path demoData) {
        for (SetUpList list : SetUpList.values()) {
            post(list, read(file(demoData.resolve("setup"), list)));
        }
        accounts.all().forEach(people::acknowledge);
        List<SeasonView> seasons = plan.seasons();
        SeasonView running = running(seasons, clock);
        for (SeasonView season : seasons) {
            if (season.startsOn().isBefore(running.startsOn())) {
                states.open(season.code());
            }
        }
        states.open(running.code());
    }

    /** The season of today, or the newest when the demo is older than its seasons. */
    static SeasonView running(List<SeasonView> seasons, Clock clock) {
        LocalDate today = LocalDate.ofInstant(clock.instant(), java.time.ZoneOffset.UTC);
        return seasons.stream()
                .filter(season -> season.contains(today))
                .findFirst()
                .orElse(seasons.get(seasons.size() - 1));
    }

    private void post(SetUpList list, byte[] file) {
        // the id follows from the content, so that loading again after an interruption finds what was posted
        UUID id = UUID.nameUUIDFromBytes(
                (list.path() + "\n" + new String(file, StandardCharsets.UTF_8)).getBytes(StandardCharsets.UTF_8));
        imports.preview(id, list.path(), file, null);
        imports.post(id);
    }

    public static Path file(Path folder, SetUpList list) {
        return Arrays.asList(".csv", ".geojson").stream()
                .map(ending -> folder.resolve(list.path() + ending))
                .filter(Files::exists)
                .findFirst()
                .orElse(folder.resolve(list.path() + ".csv"));
    }

    private static byte[] read(Path file) {
        try {
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
