package dawnkettle.sheet;

import dawnkettle.plan.DayFloor.DayChangeover;
import dawnkettle.plan.PlannedOperation;
import dawnkettle.shop.Allergen;
import dawnkettle.shop.Recipe;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/** The change-overs of a day: which station is washed between which two batches. */
final class Washes {
    private final Day day;

    Washes(Day day) {
        this.day = day;
    }

    /**
     * A wash before an operation.
     *
     * @param gone allergens that the next recipe does not have; empty for an ordinary change-over
     */
    record Wash(PlannedOperation before, int minutes, List<Allergen> gone) {
        Instant start() {
            return before.start().minusSeconds(60L * minutes);
        }
    }

    List<Wash> of(List<PlannedOperation> operations) {
        Map<String, PlannedOperation> lastAt = new HashMap<>();
        List<Wash> washes = new ArrayList<>();
        operations.stream()
                .filter(operation -> operation.occupies().isZero())
                .sorted(Comparator.comparing(PlannedOperation::start))
                .forEach(operation -> {
                    PlannedOperation before = lastAt.put(operation.station() + "/" + operation.place(), operation);
                    if (before != null) wash(before, operation, washes);
                });
        return washes;
    }

    private void wash(PlannedOperation from, PlannedOperation to, List<Wash> washes) {
        Recipe left = day.recipe(day.plan().batch(from.batch()));
        Recipe right = day.recipe(day.plan().batch(to.batch()));
        OptionalInt minutes = day.plan().floor().changeovers().stream()
                .filter(change -> change.station().equals(to.station()))
                .filter(change -> change.fromRecipe().equals(left.code())
                        && change.toRecipe().equals(right.code()))
                .mapToInt(DayChangeover::minutes)
                .findFirst();
        List<Allergen> gone = left.allergens().stream()
                .filter(allergen -> !right.allergens().contains(allergen))
                .toList();
        if (minutes.isPresent() && minutes.getAsInt() > 0) washes.add(new Wash(to, minutes.getAsInt(), gone));
    }
}
