package dawnkettle.night;

import dawnkettle.trouble.DeviceAway;
import dawnkettle.trouble.Problem;
import java.util.List;
import java.util.Optional;

/** Takes in what has been dropped or sent: into the ledger first, then to its one end. */
final class TakeOrders {
    private final Office office;

    TakeOrders(Office office) {
        this.office = office;
    }

    void run() {
        try {
            for (OrderSource.Parcel parcel : office.edges().senses().orders().look(office.now())) take(parcel);
        } catch (DeviceAway away) {
            office.tell("orders could not be looked for: " + away.getMessage());
        }
    }

    private void take(OrderSource.Parcel parcel) {
        Optional<OrderSource.Contents> contents = office.ledger().inTransaction(() -> readAndKeep(parcel));
        if (contents.isEmpty()) return;
        parcel.acknowledge(contents.get());
        office.tell(sentence(parcel, contents.get()));
    }

    /** Reads against the book as it is in this transaction, so that a command that writes beside us is seen. */
    private Optional<OrderSource.Contents> readAndKeep(OrderSource.Parcel parcel) {
        OrderSource.Contents contents = parcel.read(office.shop(), office.book(), office.now());
        if (!contents.problems().isEmpty() && isClockInDoubt()) return Optional.empty();
        office.ledger().orders().add(contents.conflicting());
        if (contents.refused()) return Optional.of(contents);
        boolean isNew = office.ledger().orders().takeFile(parcel.sha256(), parcel.name(), office.now());
        office.ledger().orders().add(contents.lines());
        if (isNew) office.ledger().orders().amend(contents.amendments());
        return Optional.of(contents);
    }

    /** By a clock that may be wrong nothing is refused as past: what has problems waits where it lies. */
    private boolean isClockInDoubt() {
        return office.edges().senses().time().doubt(office.now()).isPresent();
    }

    private static String sentence(OrderSource.Parcel parcel, OrderSource.Contents contents) {
        List<Problem> problems = contents.problems();
        if (contents.refused()) return parcel.name() + " is refused whole; the reasons lie beside it";
        return parcel.name() + ": " + contents.lines().size() + " lines and "
                + contents.amendments().size() + " amendments taken"
                + (problems.isEmpty() ? "" : ", " + problems.size() + " problems named beside it");
    }
}
