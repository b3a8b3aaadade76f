package dawnkettle.floor;

/** Where and when one operation of a job runs: {@code operation} and {@code place} count from 0, the end is exclusive. */
public record Placement(String job, int operation, String station, int place, int start, int end) {}
