package dawnkettle.night;

import java.time.Duration;

/** Notes each start of the service and its end; one that dies again and again is told while it still lives. */
public final class Starts {
    /** Deaths within it count together; common practice, no source. */
    private static final Duration LOOKED_BACK = Duration.ofHours(1);

    /** Once is a power cut, twice may be one too; as many as the unit's own count. Common practice, no source. */
    static final int MANY = 3;

    private final Office office;
    private long number;

    public Starts(Office office) {
        this.office = office;
    }

    /** First of all that the service does: what comes next may be what it dies of. */
    public void begun() {
        number = office.ledger().starts().note(office.now());
        int died = office.ledger().starts().died(office.now().minus(LOOKED_BACK), number);
        if (died < MANY) return;
        office.tell("the service died " + died + " times within the last hour");
        office.tell(new TellStopped(office).diesAgain("the night clerk"));
    }

    /** It was told to stop. */
    public void ended() {
        office.ledger().starts().ended(number, office.now());
    }
}
