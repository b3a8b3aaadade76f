package dawnkettle.night;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Whose mails count, and how often they are looked for and answered.
 *
 * @param owners addresses that may write every word of the command line, in small letters
 * @param crew addresses that may write some of them, with the words
 * @param tags customers' codes by the token behind the plus of the address that they were given
 * @param every how long between two looks
 * @param limits how many replies, and what is booked by itself
 */
public record OrderMailSettings(
        List<String> owners, Map<String, Set<String>> crew, Map<String, String> tags, Duration every, Limits limits) {
    public static final OrderMailSettings NONE =
            new OrderMailSettings(List.of(), Map.of(), Map.of(), Duration.ofMinutes(2), Limits.USUAL);

    /** What a crew address may be permitted to write. */
    public static final Set<String> CREW_WORDS = Set.of("lost", "count", "yield", "cook", "hands", "down", "sold");

    public OrderMailSettings {
        owners = List.copyOf(owners);
        crew = Map.copyOf(crew);
        tags = Map.copyOf(tags);
    }

    /**
     * @param anHour replies to one sender in an hour
     * @param aNight replies to all in twelve hours
     * @param booksWords whether what was understood of free words is booked by itself; otherwise a person books it
     */
    public record Limits(int anHour, int aNight, boolean booksWords) {
        /** Common practice, no source. */
        public static final Limits USUAL = new Limits(6, 60, false);
    }
}
