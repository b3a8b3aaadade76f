package dawnkettle.shop;

/** How a pack is closed, which decides how long a date may ever be. */
public enum Sealing {
    OPEN_BUCKET(false),
    TRAY(false),
    WATER_PACK(true),
    VACUUM(true),
    HOT_FILL(true),
    CAPPED_BOTTLE(true);

    private final boolean sealed;

    Sealing(boolean sealed) {
        this.sealed = sealed;
    }

    /** Whether air is kept out, so that the rules for sealed chilled packs hold. */
    public boolean isSealed() {
        return sealed;
    }
}
