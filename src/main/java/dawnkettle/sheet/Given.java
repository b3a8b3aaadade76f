package dawnkettle.sheet;

import java.time.LocalDate;
import java.util.Optional;

/**
 * Packs of one product for one customer, where no plan says which lot they come from.
 *
 * @param on the day on which they go out; empty where it is the production day
 */
record Given(String route, String customer, String product, int packs, Optional<LocalDate> on) {}
