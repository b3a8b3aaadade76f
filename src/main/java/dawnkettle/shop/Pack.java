package dawnkettle.shop;

/** What a product is filled into. */
public enum Pack {
    BLOCK,
    BUCKET,
    BOTTLE,
    POUCH
}
