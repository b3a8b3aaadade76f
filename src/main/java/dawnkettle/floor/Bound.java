package dawnkettle.floor;

/**
 * What no run of this day can beat, proved.
 *
 * @param weightedLateness at least so many weighted minutes late, whatever is done
 * @param finish no earlier than this minute (for runs that place every job)
 * @param binding the stage, the hands or the job that proves {@code finish}, as a word to show
 */
public record Bound(int weightedLateness, int finish, String binding) {}
