package dawnkettle.label;

/** One run's dealings with the pictures that a printer keeps: only what it has just said to have is started from. */
final class KeptTalk {
    private final Framing framing;
    private final PrinterProfile.Keeping keeping;
    private final KeptPictures kept;
    private final GroupTalk talk;
    private String listing = "";
    private boolean isGivenUp;

    KeptTalk(Framing framing, PrinterProfile.Keeping keeping, KeptPictures kept, GroupTalk talk) {
        this.framing = framing;
        this.keeping = keeping;
        this.kept = kept;
        this.talk = talk;
    }

    /** The bytes of a group by what differs, or whole where the printer does not say that it keeps what that needs. */
    byte[] group(Dots fed, int count) {
        if (!talk.isUndisturbed()) listing = "";
        if (listing.isEmpty() && !isGivenUp && kept.isWorthAsking()) {
            listing = talk.listing(keeping.listing(), true);
            kept.asked(!listing.isEmpty());
        }
        if (listing.isEmpty() || isGivenUp) return framing.group(fed, count);
        KeptPictures.Base base = kept.base(fed);
        if (isThere(base) || stored(base) || dropped() && stored(base)) {
            kept.add(base);
            return framing.from(base, fed, count);
        }
        // Without room or without an answer it is sent whole, and so is the rest of this run.
        isGivenUp = true;
        return framing.group(fed, count);
    }

    private boolean isThere(KeptPictures.Base base) {
        return listing.contains(answer(base));
    }

    private String answer(KeptPictures.Base base) {
        return keeping.listing().answer().named(base.name()).text();
    }

    private boolean stored(KeptPictures.Base base) {
        if (kept.isFull() && !kept.holds(base)) return false;
        talk.send(framing.store(base));
        listing = talk.listing(keeping.listing(), false);
        return isThere(base);
    }

    private boolean dropped() {
        talk.send(framing.drop());
        kept.forget();
        return true;
    }
}
