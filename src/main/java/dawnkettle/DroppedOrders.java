package dawnkettle;

import dawnkettle.book.Conflict;
import dawnkettle.book.OrderBook;
import dawnkettle.intake.DropFolder;
import dawnkettle.intake.Dropped;
import dawnkettle.intake.Reading;
import dawnkettle.night.OrderSource;
import dawnkettle.shop.Shop;
import java.time.Instant;
import java.util.List;

/** The drop folder as the night knows it. */
final class DroppedOrders implements OrderSource {
    private final DropFolder folder;

    DroppedOrders(DropFolder folder) {
        this.folder = folder;
    }

    @Override
    public List<Parcel> look(Instant now) {
        return folder.look(now).stream().<Parcel>map(File::new).toList();
    }

    @Override
    public List<LeftOut> leftOutSince(Instant since) {
        return folder.leftOutSince(since).stream()
                .map(one -> new LeftOut(one.file(), one.isWhole(), one.folder() + "/" + one.reasons()))
                .toList();
    }

    static Contents contents(Reading reading) {
        return new Contents(
                reading.lines(),
                reading.amendments(),
                reading.conflicts().stream().map(Conflict::other).toList(),
                reading.problems(),
                reading.isRefused());
    }

    /** One file; what was read of it is kept until it is acknowledged. */
    private static final class File implements Parcel {
        private final Dropped dropped;
        private Reading reading;

        File(Dropped dropped) {
            this.dropped = dropped;
        }

        @Override
        public String name() {
            return dropped.name();
        }

        @Override
        public String sha256() {
            return dropped.sha256();
        }

        @Override
        public Contents read(Shop shop, OrderBook book, Instant now) {
            reading = dropped.read(shop, book, now);
            return contents(reading);
        }

        @Override
        public void acknowledge(Contents contents) {
            dropped.acknowledge(reading);
        }
    }
}
