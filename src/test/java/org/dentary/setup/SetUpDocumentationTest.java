package org.dentary.setup;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Collectors;
import org.dentary.cautions.Hazard;
import org.dentary.plan.setting.PlanSetting;
import org.dentary.setup.list.SetUpList;
import org.junit.jupiter.api.Test;

/** The documentation is written from the code; {@code -Ddentary.write-docs=true} writes its tables anew. */
class SetUpDocumentationTest {
    private static final Path PAGE = Path.of("docs", "setting-up-a-season.md");
    private static final String LISTS = "<!-- lists: written from the code -->\n";
    private static final String SETTINGS = "<!-- settings: written from the code -->\n";
    private static final String END = "<!-- end -->";

    @Test
    void theTablesOfListsAndSettingsAreThoseOfTheCode() throws IOException {
        String page = Files.readString(PAGE);
        String written = between(between(page, LISTS, lists()), SETTINGS, settings());
        if (Boolean.getBoolean("dentary.write-docs")) {
            Files.writeString(PAGE, written);
        }
        assertTrue(page.equals(written), PAGE + " differs from the code; write it anew with -Ddentary.write-docs=true");
    }

    @Test
    void everyHazardIsDocumented() throws IOException {
        String page = Files.readString(Path.of("docs", "cautions.md"));
        for (Hazard hazard : Hazard.values()) {
            assertTrue(page.contains("`" + hazard + "`"), hazard.name());
        }
    }

    private static String lists() {
        return Arrays.stream(SetUpList.values())
                .map(list -> "### " + list.path() + "\n" + list.meaning() + ".\n\n"
                        + "| column | says | allowed | needed |\n|---|---|---|---|\n"
                        + list.columns().stream()
                                .map(column -> "| `" + column.name() + "` | " + column.meaning() + " | "
                                        + column.allowed()
                                        + (column.byDefault().isEmpty() ? "" : "; empty means " + column.byDefault())
                                        + " | " + (column.required() ? "yes" : "no") + " |\n")
                                .collect(Collectors.joining()))
                .collect(Collectors.joining("\n"));
    }

    private static String settings() {
        return "| setting | decides | counted in | by default | allowed |\n|---|---|---|---|---|\n"
                + Arrays.stream(PlanSetting.values())
                        .map(one -> "| `" + one + "` | " + one.meaning() + " | " + one.unit() + " | "
                                + (one.byDefault().isEmpty() ? "none" : one.byDefault()) + " | " + one.allowed()
                                + " |\n")
                        .collect(Collectors.joining());
    }

    private static String between(String page, String mark, String text) {
        int start = page.indexOf(mark) + mark.length();
        return page.substring(0, start) + text + page.substring(page.indexOf(END, start));
    }
}
