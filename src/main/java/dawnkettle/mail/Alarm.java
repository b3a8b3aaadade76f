package dawnkettle.mail;

import java.time.Instant;
import java.util.Optional;

/**
 * Something that a person should know before the morning summary says it.
 *
 * @param key its name for good, so that it is told once
 * @param happened what is the matter
 * @param safe what is not at risk
 * @param todo what to do
 * @param by until when doing it is of use
 * @param passes whether it is told once and never cleared: it can't be put right any more
 */
public record Alarm(String key, String happened, String safe, String todo, Optional<Instant> by, boolean passes) {}
