package dawnkettle.trouble;

/**
 * The disk under the ledger refuses to be read or written, or what it holds is damaged: nothing is tried again in this
 * process, which ends; after a failed sync nobody knows what the machine believes to be on the disk.
 */
public final class DiskAway extends Trouble {
    private static final long serialVersionUID = 1L;

    public DiskAway(String message, Throwable cause) {
        super(message, cause);
    }
}
