package org.dentary.intake.putright;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import org.dentary.animal.AnimalService;
import org.dentary.intake.putright.Comparison.Side;
import org.dentary.intake.putright.Comparison.Swap;
import org.dentary.platform.account.CurrentAccount;
import org.dentary.specimen.ReAttributionView;
import org.dentary.specimen.SpecimenService;
import org.dentary.specimen.SpecimenView;
import org.dentary.story.AnimalStory;
import org.dentary.story.StoryService;

/** Puts two animals side by side, as far as the account at hand may know them. */
@ApplicationScoped
class ComparisonService {
    private static final String ASKED = "ASKED";

    private final StoryService stories;
    private final AnimalService animals;
    private final SpecimenService specimens;
    private final CurrentAccount current;

    ComparisonService(StoryService stories, AnimalService animals, SpecimenService specimens, CurrentAccount current) {
        this.stories = stories;
        this.animals = animals;
        this.specimens = specimens;
        this.current = current;
    }

    /**
     * The animal under a kit beside another; where none is named, beside the one of its oldest swap that waits.
     *
     * @param with a kit of the other, or null
     * @throws org.dentary.platform.problem.NotFound if either was not taken in
     */
    Comparison of(String typed, String with) {
        Side one = side(stories.story(typed, current.get()));
        List<ReAttributionView> waiting = one.story().reAttributions().stream()
                .filter(swap -> swap.state().equals(ASKED))
                .toList();
        String beside = with != null
                ? with
                : waiting.stream().findFirst().map(swap -> farEnd(swap, one)).orElse(null);
        Side other = beside == null || one.has(beside) ? null : side(stories.story(beside, current.get()));
        List<Swap> between = new ArrayList<>();
        List<Swap> elsewhere = new ArrayList<>();
        for (ReAttributionView swap : waiting) {
            boolean shown = other != null && other.has(farEnd(swap, one));
            (shown ? between : elsewhere).add(new Swap(swap, shown ? pieces(swap, one, other) : List.of()));
        }
        return new Comparison(one, other, between, elsewhere);
    }

    private Side side(AnimalStory story) {
        List<String> kits = animals.kitsOf(story.kit());
        return new Side(story, kits, specimens.ofKits(kits));
    }

    private static String farEnd(ReAttributionView swap, Side one) {
        return one.has(swap.fromKit()) ? swap.toKit() : swap.fromKit();
    }

    /** What was cut from the tissue under the label, or from a piece of it, as far as it is the same kit's. */
    private static List<String> pieces(ReAttributionView swap, Side one, Side other) {
        Side from = one.has(swap.fromKit()) ? one : other;
        List<String> found = new ArrayList<>(List.of(swap.code()));
        for (int i = 0; i < found.size(); i++) {
            String parent = found.get(i);
            from.tissueOf(swap.fromKit()).stream()
                    .filter(specimen -> parent.equals(specimen.parent()))
                    .map(SpecimenView::code)
                    .forEach(found::add);
        }
        return List.copyOf(found.subList(1, found.size()));
    }
}
