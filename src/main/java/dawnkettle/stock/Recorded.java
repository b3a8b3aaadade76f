package dawnkettle.stock;

import java.time.Instant;

/**
 * A fact with its times and where it came from.
 *
 * @param happenedAt when it happened
 * @param recordedAt when it was written down here
 * @param origin the file and line, mail and line, or command that said it; the same origin says a kind of fact once
 */
public record Recorded(Fact fact, Instant happenedAt, Instant recordedAt, String origin) {}
