package dawnkettle.night;

import java.time.LocalDate;

/** Closes the book of the days around a test's Wednesday. */
final class LocalCloses {
    private LocalCloses() {}

    static void close(MailShop shop) {
        for (LocalDate day : java.util.List.of(LocalDate.of(2026, 12, 3), LocalDate.of(2026, 12, 4)))
            shop.ledger.closes().close(shop.office.book().close(day, shop.now));
    }
}
