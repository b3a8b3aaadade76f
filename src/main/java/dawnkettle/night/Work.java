package dawnkettle.night;

import java.time.LocalDate;

/** What a step does. */
interface Work {
    /**
     * Does the step of a business date; what is done already is not done again.
     *
     * @return what was done, in words for the ledger
     * @throws dawnkettle.trouble.DeviceAway where it is to be tried again
     */
    String run(LocalDate businessDate);
}
