package dawnkettle.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What the evening hand should know of a soak that is counted with figures nobody has seen at work. */
final class SoakDoubts {
    private SoakDoubts() {}

    /** Empty where the room and the tap lie where soaks were observed. */
    static List<String> of(Temperatures temperatures) {
        List<String> doubts = new ArrayList<>();
        double room = temperatures.room().degrees();
        if (room <= 0)
            doubts.add(String.format(
                    Locale.ROOT,
                    "The soak room stands at %s (%s): water freezes there. Soak elsewhere, or warm the room first.",
                    temperatures.room(),
                    temperatures.source()));
        else if (room < SoakLaw.COLDEST_SEEN)
            doubts.add(String.format(
                    Locale.ROOT,
                    "The soak room stands at %s (%s), colder than any soak that was published (5 °C): measure the water"
                            + " in the tub, and do not trust the hours.",
                    temperatures.room(),
                    temperatures.source()));
        return doubts;
    }
}
