package dawnkettle.trouble;

/** The world refused (a printer, a mail server, a disk): what was done, what is still due, what to do. */
public final class DeviceAway extends Trouble {
    private static final long serialVersionUID = 1L;

    private final boolean ambiguous;

    private DeviceAway(String message, boolean ambiguous, Throwable cause) {
        super(message, cause);
        this.ambiguous = ambiguous;
    }

    /** Nothing left the machine; the same thing may be tried again without marking it. */
    public static DeviceAway clean(String message, Throwable cause) {
        return new DeviceAway(message, false, cause);
    }

    /** It is not known whether the thing went out. */
    public static DeviceAway ambiguous(String message, Throwable cause) {
        return new DeviceAway(message, true, cause);
    }

    public boolean isAmbiguous() {
        return ambiguous;
    }
}
