package dawnkettle.night;

import dawnkettle.label.Confirmed;
import dawnkettle.label.LabelJournal;
import dawnkettle.stock.LotCode;
import dawnkettle.store.LabelGroup;
import dawnkettle.store.LabelNumbers;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** Writes down each group of labels as the printer answers for it; a label that was certain before stays as it was. */
final class LabelLog implements LabelJournal {
    private final Office office;
    private Optional<Confirmed> intended = Optional.empty();
    private Optional<Confirmed> doubtful = Optional.empty();
    /** False while, and after, the ledger did not take what became of a group. */
    private boolean isNoted = true;

    LabelLog(Office office) {
        this.office = office;
    }

    /** After a run that ended ambiguous: what the printer did not answer for, at least the group that it got last. */
    Optional<Confirmed> inDoubt() {
        if (doubtful.isEmpty()) intended.ifPresent(this::doubtful);
        return doubtful;
    }

    /** After a run, however it ended: what became of the group that was sent last is noted; where it is not, it stays in flight. */
    void landed() {
        if (isNoted) intended.ifPresent(this::landed);
    }

    private void note(Confirmed group, Consumer<LabelGroup> how) {
        isNoted = false;
        news(group).forEach(how);
        isNoted = true;
    }

    private void landed(Confirmed group) {
        office.ledger().labels().landed(new LotCode(group.lot()), group.product(), office.now());
    }

    @Override
    public void intended(Confirmed group) {
        intended = Optional.of(group);
        landed(group);
        for (LabelGroup part : news(group)) office.ledger().labels().inFlight(part, office.now());
    }

    @Override
    public void confirmed(Confirmed group) {
        note(group, part -> office.ledger().labels().confirmed(part, office.now()));
    }

    @Override
    public void paused(String why) {
        office.tell("the label printer waits: " + why);
        new PauseMail(office).tell("the label printer waits", why + ".");
    }

    @Override
    public void doubtful(Confirmed group) {
        doubtful = Optional.of(group);
        note(
                group,
                part -> office.ledger().labels().uncertain(part, office.now(), "the printer did not answer for them"));
    }

    private List<LabelGroup> news(Confirmed group) {
        LotCode lot = new LotCode(group.lot());
        return LabelNumbers.of(group.first(), group.last())
                .minus(office.ledger().labels().certain(lot, group.product()))
                .stretches()
                .stream()
                .map(part -> new LabelGroup(lot, group.product(), part.from(), part.to()))
                .toList();
    }
}
