package dawnkettle.night;

import dawnkettle.plan.PlannedLabel;
import dawnkettle.store.LabelNumbers;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;

/**
 * A run of labels that did not come out whole, and what a person has to do about it.
 *
 * @param certain surely came out, or were found
 * @param look perhaps came out; never printed again by themselves
 * @param goesOn whether the night still prints what surely did not come out
 */
public record BrokenRun(PlannedLabel label, LabelNumbers certain, LabelNumbers look, boolean goesOn) {
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
        LabelNumbers missing = missing();
        if (!missing.isEmpty() && goesOn)
            parts.add(missing
                    + (missing.count() == 1 ? " comes" : " come")
                    + (missing.count() == 1 ? " by itself" : " by themselves"));
        else if (!missing.isEmpty())
            parts.add(be(missing, "", "") + " not printed: print them with " + command(missing));
        if (missing.isEmpty() || goesOn) parts.add("print what is not there with " + command(look));
        return "lot " + label.lot() + " " + label.product() + ": " + String.join(", ", parts);
    }

    /** The same in the order of the labels, as it lies among them: 1 to 37 printed, look at 38, 39 to 60 printed. */
    List<String> counted() {
        List<Counted> all = new ArrayList<>();
        for (LabelNumbers.Stretch part : certain.stretches()) all.add(new Counted(part.from(), part + " printed"));
        for (LabelNumbers.Stretch part : look.stretches()) all.add(new Counted(part.from(), "look at " + part));
        for (LabelNumbers.Stretch part : missing().stretches())
            all.add(new Counted(part.from(), part + " not printed"));
        return all.stream()
                .sorted(Comparator.comparingInt(Counted::from))
                .map(Counted::words)
                .toList();
    }

    private record Counted(int from, String words) {}

    private static String be(LabelNumbers numbers, String one, String more) {
        return numbers.count() == 1 ? one + numbers + " is" : more + numbers + " are";
    }

    private String command(LabelNumbers numbers) {
        return numbers.stretches().stream()
                .map(stretch -> "`print labels --lot " + label.lot() + " --product " + label.product() + " --from "
                        + stretch.from() + " --to " + stretch.to() + " --why …`")
                .collect(Collectors.joining(" and "));
    }
}
