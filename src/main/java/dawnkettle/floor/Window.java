package dawnkettle.floor;

/** A stretch of minutes, half open. */
public record Window(int fromInclusive, int untilExclusive) {
    public Window {
        if (fromInclusive < 0 || untilExclusive <= fromInclusive)
            throw new IllegalArgumentException(
                    "a window runs forward from minute 0: " + fromInclusive + " to " + untilExclusive);
    }
}
