package dawnkettle.night;

import dawnkettle.book.Amendment;
import dawnkettle.book.OrderBook;
import dawnkettle.book.OrderLine;
import dawnkettle.shop.Shop;
import dawnkettle.trouble.Problem;
import java.time.Instant;
import java.util.List;

/** Where orders come in by themselves: a drop folder, a mailbox. */
public interface OrderSource {
    /** What has come in and is not acknowledged yet. */
    List<Parcel> look(Instant now);

    /** What was left out since then, of which somebody should know. */
    default List<LeftOut> leftOutSince(Instant since) {
        return List.of();
    }

    /**
     * Something that came in of which not all was taken.
     *
     * @param isWhole whether nothing of it was taken
     * @param reasons the file that says why, by its name
     */
    record LeftOut(String name, boolean isWhole, String reasons) {
        String said() {
            return name + (isWhole ? ", all of it" : ", some of its orders") + "; the reasons stand in " + reasons;
        }
    }

    /** Something that came in whole: a file, a mail. */
    interface Parcel {
        String name();

        /** By which it is known again. */
        String sha256();

        Contents read(Shop shop, OrderBook book, Instant now);

        /** Puts it to its one end, once what it holds is in the ledger. */
        void acknowledge(Contents contents);
    }

    /**
     * What a parcel holds.
     *
     * @param conflicting lines that the book has with other content; kept so that somebody asks
     */
    record Contents(
            List<OrderLine> lines,
            List<Amendment> amendments,
            List<OrderLine> conflicting,
            List<Problem> problems,
            boolean refused) {
        public Contents {
            conflicting = List.copyOf(conflicting);
            lines = List.copyOf(lines);
            amendments = List.copyOf(amendments);
            problems = List.copyOf(problems);
        }
    }
}
