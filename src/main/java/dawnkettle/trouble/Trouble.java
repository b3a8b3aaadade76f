package dawnkettle.trouble;

/** Something the operator can put right; the message is what they read. Any other exception is a bug of ours. */
public abstract sealed class Trouble extends RuntimeException permits BadFile, DeviceAway, DiskAway {
    private static final long serialVersionUID = 1L;

    Trouble(String message, Throwable cause) {
        super(message, cause);
    }
}
