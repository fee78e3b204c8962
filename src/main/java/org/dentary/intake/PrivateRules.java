package org.dentary.intake;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.dentary.animal.vault.ExactPoint;
import org.dentary.platform.problem.InvalidInput;

/** What must hold of where an animal is said to have died. */
final class PrivateRules {
    private PrivateRules() {}

    /**
     * Holds a point against the unit that was stated. A unit without a boundary, an unknown one and a place told in words alone are
     * held against nothing.
     *
     * @param unit the unit stated; null for unknown
     * @param shapes the boundaries on record
     * @throws InvalidInput when the point lies farther outside than it is uncertain, naming the unit in which it lies
     */
    static void requireWithin(String unit, ExactPoint point, List<UnitShape> shapes) {
        Optional<UnitShape> stated =
                shapes.stream().filter(shape -> shape.unit().equals(unit)).findFirst();
        if (point == null || point.latitude() == null || stated.isEmpty()) {
            return;
        }
        double longitude = point.longitude().doubleValue();
        double latitude = point.latitude().doubleValue();
        double away = stated.get().metersTo(longitude, latitude);
        if (away > (point.uncertaintyMetres() == null ? 0 : point.uncertaintyMetres())) {
            String in = shapes.stream()
                    .filter(shape -> shape.contains(longitude, latitude))
                    .map(shape -> ", in unit " + shape.unit())
                    .findFirst()
                    .orElse("");
            throw InvalidInput.field(
                    "point.latitude",
                    "POINT_OUTSIDE_UNIT",
                    String.format(
                            Locale.US,
                            "The point lies %,.1f km outside unit %s (boundaries, edition %s)%s; correct the point or the unit, say"
                                    + " within how many meters it is certain, or leave the point out",
                            away / 1000,
                            unit,
                            stated.get().edition(),
                            in));
        }
    }
}
