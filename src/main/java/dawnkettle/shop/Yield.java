package dawnkettle.shop;

import dawnkettle.measure.Share;

/**
 * What comes out of what goes in.
 *
 * @param mean mass of product (after pressing, before trimming) per mass of dry beans, or per mass of the recipe it is made from
 * @param spread standard deviation of the same
 * @param trim share of the product lost in cutting
 */
public record Yield(Share mean, Share spread, Share trim) {}
