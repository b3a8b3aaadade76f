package dawnkettle.sheet;

import dawnkettle.measure.Mass;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What the owner asks of the sheets.
 *
 * @param languages one or two BCP 47 tags; the second is printed below the first, smaller
 * @param scoops what a level scoop of a material weighs, by its code; what is not named is weighed
 * @param hasIfCard whether the card of losses is worked out, which takes some seconds of each revision
 */
public record SheetSettings(List<String> languages, Map<String, Mass> scoops, boolean hasIfCard) {
    /** The languages that the sheets can speak. */
    public static final List<String> SPOKEN = Tongue.SPOKEN;

    public SheetSettings {
        languages = List.copyOf(languages);
        scoops = Map.copyOf(scoops);
        if (languages.isEmpty() || languages.size() > 2)
            throw new IllegalArgumentException("sheets speak one language or two, not " + languages.size());
    }

    public SheetSettings(List<String> languages, Map<String, Mass> scoops) {
        this(languages, scoops, true);
    }

    /** In one language, everything weighed, with the card of losses. */
    public static SheetSettings in(String language) {
        return new SheetSettings(List.of(language), Map.of());
    }

    /** Which of the spoken languages a tag asks for. */
    public static Optional<String> spoken(String tag) {
        return Tongue.spoken(tag);
    }
}
