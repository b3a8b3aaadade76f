package dawnkettle.sheet;

import java.time.Instant;

/**
 * What a sheet says of itself besides its marks.
 *
 * @param title as a reader's window shows it
 * @param language a BCP 47 tag
 * @param madeAt the planning clock, never the clock on the wall
 */
public record Imprint(String title, String language, PaperSize paper, Instant madeAt) {}
