package dawnkettle.night;

import dawnkettle.trouble.DeviceAway;
import dawnkettle.trouble.DiskAway;
import java.nio.file.Files;

/** Looks at the disk before each tick and after one that failed: room is made once, a disk that takes nothing ends the process. */
public final class DiskWatch {
    private final Office office;
    private final Ballast ballast;
    private boolean told;

    public DiskWatch(Office office) {
        this.office = office;
        this.ballast = Ballast.of(office);
        ballast.make();
    }

    /** @throws DiskAway where the disk takes nothing any more though it has room */
    public void look() {
        if (ballast.isLow() || office.ledger().wasFull()) makeRoom();
        try {
            ballast.writeSomething();
        } catch (DeviceAway away) {
            makeRoom();
            againOrEnd();
        }
    }

    private void againOrEnd() {
        try {
            ballast.writeSomething();
        } catch (DeviceAway away) {
            if (ballast.free() > 0 || !Files.isWritable(ballast.file().getParent()))
                throw new DiskAway(away.getMessage(), away);
            office.tell(away.getMessage());
        }
    }

    private void makeRoom() {
        boolean made = ballast.giveUp();
        if (made || !told)
            office.tell(
                    made
                            ? "the disk is full: room that was kept back is given up, so that the night can be finished; make room now"
                            : "the disk is nearly full; make room now");
        told = true;
    }
}
