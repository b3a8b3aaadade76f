package dawnkettle.floor;

/** Minutes a place of a station stands between a job of one family and a job of another. None is named: none is needed. */
public record Changeover(String station, String fromFamily, String toFamily, int minutes) {}
