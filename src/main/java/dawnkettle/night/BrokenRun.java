package dawnkettle.night;

import dawnkettle.plan.PlannedLabel;
import dawnkettle.store.LabelNumbers;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Labels of which the night prints no more by itself, and what a person has to do about them.
 *
 * @param certain surely came out, or were found
 * @param look perhaps came out
 */
public record BrokenRun(PlannedLabel label, LabelNumbers certain, LabelNumbers look) {
    /** Surely did not come out. */
    LabelNumbers missing() {
        return LabelNumbers.of(1, label.count()).minus(certain).minus(look);
    }

    boolean isWhole() {
        return look.isEmpty() && missing().isEmpty();
    }

    /** What is certain, what to look at, what is not printed, and how it is had. */
    public String said() {
        List<String> parts = new ArrayList<>();
        parts.add(certain.isEmpty() ? "no label is certain" : be(certain, "label ", "labels ") + " certain");
        if (!look.isEmpty()) parts.add("look at " + look);
        if (!missing().isEmpty()) parts.add(be(missing(), "", "") + " not printed: print them with " + command());
        else parts.add("print what is not there with " + command());
        return "lot " + label.lot() + " " + label.product() + ": " + String.join(", ", parts);
    }

    private static String be(LabelNumbers numbers, String one, String more) {
        return numbers.count() == 1 ? one + numbers + " is" : more + numbers + " are";
    }

    private String command() {
        return (missing().isEmpty() ? look : missing())
                .stretches().stream()
                        .map(stretch -> "`print labels --lot " + label.lot() + " --product " + label.product()
                                + " --from " + stretch.from() + " --to " + stretch.to() + " --why …`")
                        .collect(Collectors.joining(" and "));
    }
}
