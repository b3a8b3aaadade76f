package dawnkettle.shop;

import java.time.LocalDate;

/**
 * How long a product keeps: the owner's validated figures, which nothing here ever lengthens.
 *
 * @param shelfLifeDays days from the pack date to the printed date
 * @param validatedBy who validated that life
 * @param validatedOn when
 * @param leastDaysLeft days that must be left on the day of delivery
 */
public record Keeping(
        int shelfLifeDays,
        String validatedBy,
        LocalDate validatedOn,
        Sealing sealing,
        boolean pasteurised,
        int leastDaysLeft) {
    /** The last day at which a pack of {@code packDate} may be delivered. */
    public LocalDate lastDelivery(LocalDate packDate) {
        return bestBefore(packDate).minusDays(leastDaysLeft);
    }

    public LocalDate bestBefore(LocalDate packDate) {
        return packDate.plusDays(shelfLifeDays);
    }
}
