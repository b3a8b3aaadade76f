package dawnkettle.shop;

import dawnkettle.measure.Mass;
import java.util.List;

/**
 * A grinder, cooker, press, vat, bath, bench …
 *
 * @param stage kind of work, the word that recipes' steps name
 * @param group heading of the run sheet it stands on
 * @param places batches it holds at once; 0 where {@code capacity} rules
 * @param capacity product it holds at once; zero where {@code places} rule
 */
public record WorkStation(
        String code, String name, String stage, String group, int places, Mass capacity, List<Opening> openings) {
    public WorkStation {
        openings = List.copyOf(openings);
    }
}
