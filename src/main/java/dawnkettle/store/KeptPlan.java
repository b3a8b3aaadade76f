package dawnkettle.store;

import java.time.Instant;
import java.time.LocalDate;

/** A revision of a day's plan as it is kept: its open form as text. */
public record KeptPlan(LocalDate productionDate, int revision, Instant computedAt, String mode, String json) {}
