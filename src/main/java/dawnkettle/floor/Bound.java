package dawnkettle.floor;

/**
 * What no run of this day can beat, proved for runs that place every job which can be placed at all.
 *
 * @param weightedLateness at least so many weighted minutes late, whatever is done
 * @param finish no earlier than this minute; where it is told of a run in time, no run in time ends earlier
 * @param binding the stage, the hands or the job that proves {@code finish}, as a word to show
 */
public record Bound(int weightedLateness, int finish, String binding) {}
