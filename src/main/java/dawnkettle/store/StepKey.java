package dawnkettle.store;

import java.time.LocalDate;

/** Which run of which step: the step's word, the day it is for, and the revision, from 1. */
public record StepKey(String step, LocalDate businessDate, int revision) {
    public static StepKey of(String step, LocalDate businessDate) {
        return new StepKey(step, businessDate, 1);
    }
}
