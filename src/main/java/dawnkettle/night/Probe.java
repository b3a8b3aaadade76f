package dawnkettle.night;

import java.util.function.Supplier;

/**
 * A device, an account or a folder of the owner's that the evening self-test asks while somebody is awake.
 *
 * @param what what is asked, as "office printer"
 * @param safe what is not at risk while it does not answer
 * @param todo what a person does about it
 * @param question answers in a few words; throws a {@link dawnkettle.trouble.Trouble} where it is not well
 */
public record Probe(String what, String safe, String todo, Supplier<String> question) {}
