package dawnkettle.shop;

import dawnkettle.measure.Celsius;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * One step of a recipe.
 *
 * @param name what is done, in the shop's word
 * @param stage kind of station it is done at
 * @param minutes how long, for a kettle of any size
 * @param halfHands half people bound for the whole of it
 * @param longestWait minutes it may wait after the step before; empty where it may stand
 * @param target temperature to hold or reach; empty where none matters
 */
public record Step(
        String name, String stage, int minutes, int halfHands, OptionalInt longestWait, Optional<Celsius> target) {}
