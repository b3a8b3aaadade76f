package dawnkettle.night;

import java.time.LocalDate;

/** No plan came out, and what stands in its place says so: told to a person as it is. */
final class NoPlan extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** What asks for a plan that is not there. */
    NoPlan(LocalDate productionDate) {
        this(of(productionDate), null);
    }

    NoPlan(String message, RuntimeException cause) {
        super(message, cause);
    }

    /** How a step says that it waits for the plan of a day. */
    static String of(LocalDate productionDate) {
        return "there is no plan of " + productionDate;
    }
}
