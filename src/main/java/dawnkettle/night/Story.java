package dawnkettle.night;

import java.time.Instant;

/** Hears what the night does, a sentence at a time: a terminal, a journal, a page. No customer is named to it. */
public interface Story {
    void tell(Instant at, String line);
}
