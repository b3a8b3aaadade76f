package dawnkettle.shop;

import dawnkettle.measure.Share;

/**
 * What a product is packed in.
 *
 * @param material a tray, a bag, a case, a label
 * @param pieces how many; less than one for what comes back, as a bucket that lasts twenty rounds
 */
public record PackUse(String product, String material, Per per, Share pieces) {
    /** What the pieces are counted for. */
    public enum Per {
        PACK,
        CASE
    }
}
