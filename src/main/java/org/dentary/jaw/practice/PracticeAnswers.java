package org.dentary.jaw.practice;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.UUID;
import org.dentary.jaw.AgeingPlans;
import org.dentary.jaw.ReadJaw;
import org.dentary.jaw.key.AgeClass;
import org.dentary.jaw.key.JawAnswer;
import org.dentary.jaw.key.JawContext;
import org.dentary.jaw.key.JawKey;
import org.dentary.jaw.key.JawObservation;

/** What is told of a round's jaws: nothing before the end, then the right class and the key's way to it. */
@ApplicationScoped
class PracticeAnswers {
    private static final String KEYS_OWN = "Drawn for the key: what it answers is right";

    private final AgeingPlans plans;
    private final ObjectMapper json;

    PracticeAnswers(AgeingPlans plans, ObjectMapper json) {
        this.plans = plans;
        this.json = json;
    }

    /** What the key answers to a drawn jaw; days and places have no part in it. */
    JawAnswer drawn(String name) {
        return JawKey.answer(DrawnJaws.seen(name).orElseThrow(), JawContext.NONE, plans.on(null, null));
    }

    PracticeView.Jaw blinded(UUID round, PracticeQueries.JawRow jaw, List<PracticeView.Picture> pictures) {
        return new PracticeView.Jaw(jaw.position(), null, pictures, given(jaw), null, null, null, null, null);
    }

    /** @param reference the animal's jaw; null where the jaw is drawn */
    PracticeView.Jaw told(
            PracticeQueries.JawRow jaw, PracticeQueries.ReferenceRow reference, List<PracticeView.Picture> pictures) {
        JawAnswer key = reference == null ? drawn(jaw.jaw()) : asked(reference);
        return new PracticeView.Jaw(
                jaw.position(),
                PracticeView.JawKind.valueOf(jaw.kind()),
                pictures,
                given(jaw),
                AgeClass.valueOf(jaw.rightClass()),
                jaw.rightClass().equals(jaw.givenClass()),
                reference == null ? KEYS_OWN : reference.source(),
                key == null ? null : key.certainty().name(),
                key == null ? List.of() : key.steps());
    }

    /** The key's answer to what was seen; null where nobody wrote it down, or today's key asks for more. */
    private JawAnswer asked(PracticeQueries.ReferenceRow reference) {
        if (reference.observation() == null) {
            return null;
        }
        try {
            JawObservation seen =
                    json.readValue(reference.observation(), ReadJaw.class).observation(reference.species());
            boolean answers =
                    JawKey.problems(seen, JawContext.NONE, plans.on(null, null)).isEmpty();
            return answers ? JawKey.answer(seen, JawContext.NONE, plans.on(null, null)) : null;
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a reading is not what was written", e);
        }
    }

    private static AgeClass given(PracticeQueries.JawRow jaw) {
        return jaw.givenClass() == null ? null : AgeClass.valueOf(jaw.givenClass());
    }
}
