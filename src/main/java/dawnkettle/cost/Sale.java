package dawnkettle.cost;

import dawnkettle.measure.Money;
import java.time.LocalDate;

/**
 * Packs that went to a customer, or came back as a credit.
 *
 * @param lot its code
 * @param packs below zero for what was given back
 * @param each price of a pack on that day
 */
public record Sale(LocalDate date, String customer, String product, String lot, long packs, Money each) {
    public Money amount() {
        return each.times(packs);
    }

    public boolean isCredit() {
        return packs < 0;
    }

    /** Returnable containers that a customer has had and given back since a day. */
    public record Containers(String customer, String product, long out, long back, Money deposit) {
        public long kept() {
            return out - back;
        }
    }
}
