package dawnkettle.floor;

/** A minute by which the jobs that name it should have ended, and how much a minute late weighs. */
public record Due(String code, int minute, int weight) {}
