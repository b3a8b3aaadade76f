package dawnkettle.plan;

/** A look at the beans of a soak group, as somebody wrote it down. */
public record SoakLook(String soakGroup, SoakObservation seen) {}
