package dawnkettle.book;

import dawnkettle.book.Leftover.Trimmed;
import dawnkettle.book.PairItems.Item;
import dawnkettle.book.Piece.Days;
import dawnkettle.book.Piece.Doubt;
import dawnkettle.book.Piece.Talk;
import dawnkettle.book.Piece.Verb;
import dawnkettle.book.Piece.Want;
import dawnkettle.book.Piece.Wish;
import dawnkettle.book.Reckon.Reckoned;
import dawnkettle.book.Sense.Kind;
import dawnkettle.book.Sentence.Part;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/** Reads one sentence into days, wishes, doubts and talk. A part with any word that is not understood is never a wish. */
final class ReadSentence {
    static final String UNREAD =
            "We do not understand these words; please write packs and product, as in: 12 firm 400.";
    static final String UNSURE = "We are not sure what you mean; please write packs and product.";
    static final Kind[] DEEDS = {
        Kind.SET, Kind.SET_TO, Kind.ONLY, Kind.OLD, Kind.DROP, Kind.NO, Kind.SKIP, Kind.SAME, Kind.SAME_AS, Kind.DOUBLE
    };

    private final Sentence sentence;
    private final List<Trimmed> trimmed;
    private final List<Part> parts;
    private final FindProduct products;
    private final Reckon reckon;
    private final Traps traps;
    private final Leftover leftover;
    private final BitSet uncertain;
    private final List<Piece> pieces = new ArrayList<>();
    private final List<Integer> origins = new ArrayList<>();
    private int here;
    private Optional<Kind> carried = Optional.empty();
    private boolean dropping;
    private boolean changing;
    private List<Sense> pack = List.of();
    private boolean dayBefore;
    private boolean loose;
    private boolean strangeBefore;

    private ReadSentence(Sentence sentence, OrderReading context) {
        this.sentence = sentence;
        this.products = new FindProduct(context);
        this.reckon = new Reckon(context, products);
        this.traps = new Traps(sentence, products);
        this.leftover = new Leftover(sentence);
        this.trimmed = leftover.trimmed(sentence.parts());
        this.parts = trimmed.stream().map(Trimmed::core).toList();
        this.uncertain = Taints.of(parts, leftover, parts.stream().anyMatch(this::isBeforeColon));
    }

    static List<Piece> of(Sentence sentence, OrderReading context) {
        ReadSentence read = new ReadSentence(sentence, context);
        for (Trimmed one : read.trimmed) read.trimmed(one);
        boolean doubtful = read.loose || read.traps.isOnlyAsking();
        new SettleSentence(sentence, read.parts, read.leftover, read.pieces, read.origins)
                .all(read.carried, doubtful, read.uncertain);
        return read.pieces;
    }

    private void trimmed(Trimmed one) {
        one.before().ifPresent(this::aside);
        part(one.core());
        one.after().ifPresent(this::aside);
        here++;
    }

    private void aside(Part part) {
        add(new Talk(words(part)));
    }

    private void add(Piece piece) {
        pieces.add(piece);
        origins.add(here);
    }

    private void part(Part whole) {
        Part part = withoutEach(whole);
        if (part.has(Kind.HELLO) && !part.has(Kind.NUMBER, Kind.A) && !part.has(DEEDS)) aside(part);
        else if (part.isDay() && DayAmongWords.isOver(parts, here)) aside(part);
        else if (part.isDay()) day(part);
        else if (part.has(Leftover.STRANGE)) strange(part);
        else if (part.has(Kind.OLD)) old(part);
        else if (part.isOfOrder()) items(part);
        else deed(part);
        boolean deeds = part.has(Kind.SET, Kind.SET_TO, Kind.ONLY, Kind.DROP, Kind.DOUBLE);
        boolean figure =
                part.has(Kind.NUMBER) && !part.has(Kind.KIND, Kind.FORM, Kind.CODE, Kind.OLD) && !part.isSized();
        loose |= figure && (deeds || !part.has(Leftover.STRANGE));
        if (!part.isDay())
            strangeBefore = part.has(Leftover.STRANGE) && !Taints.leadsTo(part) && !Leftover.isEntry(part);
        dayBefore = part.isDay() || dayBefore && JoinDays.isLink(part);
    }

    /** "Mon and Tue each 6 firm": behind several days "each" says nothing new. */
    private Part withoutEach(Part part) {
        List<Sense> rest = part.senses().subList(1, part.senses().size());
        boolean each = part.senses().get(0).is(Kind.EACH)
                && !rest.isEmpty()
                && !pieces.isEmpty()
                && pieces.get(pieces.size() - 1) instanceof Days days
                && days.days().size() > 1;
        return each ? new Part(List.copyOf(rest), part.joined()) : part;
    }

    private void doubt(String why, Part part) {
        add(new Doubt(why, words(part)));
    }

    private String words(Part part) {
        return sentence.words(part.senses());
    }

    private void day(Part part) {
        Sense sense = part.senses().get(0);
        boolean asked = sense.is(Kind.ON_ASKED);
        boolean strange = strangeBefore && part.joined() && !DayAmongWords.isOnlyOne(sentence, sense);
        String why = asked ? sense.value() : strange ? UNSURE : "";
        List<LocalDate> days = asked ? List.of() : List.of(LocalDate.parse(sense.value()));
        Days said = new Days(days, why, sentence.has(Kind.ALL), words(part));
        boolean wanted = !pieces.isEmpty() && pieces.get(0) instanceof Want;
        boolean anew = wanted && DayAmongWords.heads(parts, here);
        boolean follows = !pieces.isEmpty() && pieces.get(pieces.size() - 1) instanceof Days;
        if (follows && dayBefore && !anew)
            pieces.set(pieces.size() - 1, JoinDays.both((Days) pieces.get(pieces.size() - 1), said));
        else {
            if (follows && !anew) pieces.set(pieces.size() - 1, JoinDays.unsure((Days) pieces.get(pieces.size() - 1)));
            add(follows && !anew ? JoinDays.unsure(said) : said);
        }
    }

    /** Words we do not know: an order that is asked about, or talk. */
    private void strange(Part part) {
        boolean behindDay = part.joined() && !pieces.isEmpty() && pieces.get(pieces.size() - 1) instanceof Days;
        boolean remark = Taints.isRemark(part);
        if (behindDay && (Leftover.isRisky(part) || !remark && !Leftover.isEntry(part)))
            pieces.set(pieces.size() - 1, JoinDays.unsure((Days) pieces.get(pieces.size() - 1)));
        boolean vague = part.has(Kind.UNSURE, Kind.VAGUE) && !part.has(Kind.UNKNOWN);
        boolean order = !remark && (part.isOfOrder() || part.has(DEEDS)) || vague;
        boolean mention = !part.has(Kind.NUMBER, Kind.A)
                && !words(part).matches(".*\\d.*")
                && !part.has(DEEDS)
                && !Leftover.isRisky(part);
        boolean polite = part.has(Kind.HELLO, Kind.BYE) && !part.isOfOrder();
        if (leftover.isReason(part) || polite || !order || mention && !Taints.asks(part)) add(new Talk(words(part)));
        else doubt(UNREAD, part);
    }

    /** "not 10": what was wished just now is instead of something. */
    private void old(Part part) {
        boolean figures = part.has(Kind.NUMBER, Kind.A) && !part.has(Kind.KIND, Kind.CODE);
        int last = pieces.size() - 1;
        while (last >= 0 && pieces.get(last) instanceof Days) last--;
        boolean strange = !part.isOfOrder() && part.has(Kind.UNKNOWN) && last >= 0 && pieces.get(last) instanceof Talk;
        if (figures && last >= 0 && pieces.get(last) instanceof Want want && counted(want)) {
            Wish wish = want.wish();
            String words = want.words() + " " + words(part);
            pieces.set(last, new Want(new Wish(Verb.SET, wish.product(), wish.packs(), ""), words));
        } else if (strange) aside(part);
        else {
            pieces.replaceAll(SettleSentence::doubted);
            doubt(UNSURE, part);
        }
    }

    private static boolean counted(Want want) {
        return want.wish().verb() == Verb.MORE || want.wish().verb() == Verb.SET;
    }

    /** A part without product and figure: skip, same as, or a word that goes on to the next part. */
    private void deed(Part part) {
        long many = part.senses().stream().filter(sense -> sense.is(DEEDS)).count();
        if (many == 0) return;
        Sense deed = part.senses().stream()
                .filter(sense -> sense.is(DEEDS))
                .findFirst()
                .orElseThrow();
        boolean clear = part.senses().stream()
                                .filter(s -> s.is(DEEDS))
                                .map(Sense::kind)
                                .distinct()
                                .count()
                        == 1
                && !part.has(Kind.TO, Kind.BY, Kind.MORE);
        boolean heads = deed.is(Kind.SAME) && sentence.has(Kind.COLON) && here + 1 < parts.size();
        if (heads && pieces.stream().allMatch(Days.class::isInstance)) return;
        boolean filledIn =
                deed.is(Kind.SKIP) && deed.value().equals("or_drop") && strangeBefore && sentence.has(Kind.COLON);
        if (!clear || filledIn) doubt(UNSURE, part);
        else if (deed.is(Kind.SET_TO) && part.senses().stream().anyMatch(s -> Asking.says(s, "order")))
            carried = Optional.of(Kind.SET);
        else if (deed.is(Kind.SKIP)) want(Wish.of(Verb.SKIP), part);
        else if (deed.is(Kind.SAME_AS) && !deed.value().isEmpty()) want(new Wish(Verb.AS, "", 0, deed.value()), part);
        else if (deed.is(Kind.SAME) && part.senses().get(part.senses().size() - 1) != null)
            want(Wish.of(Verb.COPY), part);
        else if (deed.is(Kind.DROP, Kind.SET, Kind.SET_TO, Kind.DOUBLE, Kind.ONLY, Kind.NO))
            carried = Optional.of(deed.kind());
        else doubt("As on which day? Please write its date.", part);
    }

    private void want(Wish wish, Part part) {
        add(new Want(wish, words(part)));
    }

    private void items(Part part) {
        Part counted = traps.counted(carryPack(part));
        Optional<List<Item>> paired = traps.isBroken(counted, carried.isPresent() || changing) || traps.isEither(part)
                ? Optional.empty()
                : PairItems.of(counted.senses(), products);
        List<Kind> deeds = new ArrayList<>(part.senses().stream()
                .filter(s -> s.is(DEEDS))
                .map(Sense::kind)
                .distinct()
                .toList());
        carried.filter(deed -> !deeds.contains(deed)).ifPresent(deeds::add);
        carried = Optional.empty();
        if (deeds.isEmpty() && Traps.isDown(part) || changing && deeds.isEmpty() && part.has(Kind.TO))
            deeds.add(Kind.SET_TO);
        changing = deeds.contains(Kind.SET_TO);
        if (paired.isEmpty() || deeds.size() > 1) doubt(UNREAD, part);
        else if (deeds.isEmpty()) plain(paired.get(), part);
        else changed(deeds.get(0), paired.get(), part);
    }

    /** "Two buckets of firm, one of medium": one bucket, where the words alone mean no other product. */
    private Part carryPack(Part part) {
        Part carried = CarryPack.to(part, pack, products);
        pack = CarryPack.of(part, pack);
        return carried;
    }

    private void plain(List<Item> items, Part part) {
        boolean named = items.stream()
                .allMatch(item -> item.product().stream().anyMatch(s -> s.is(Kind.KIND, Kind.FORM, Kind.CODE)));
        if (items.size() > 1 && !named) {
            doubt(UNREAD, part);
            return;
        }
        for (Item item : items) {
            String words = items.size() == 1 ? words(part) : itemWords(item, items, part);
            if (item.figure().isEmpty() && dropping) wish(Verb.DROP, reckon.product(item), words);
            else if (item.figure().isEmpty()) add(new Doubt("How many packs are meant?", words));
            else if (dropping && !part.has(Kind.MORE)) add(new Doubt(UNSURE, words));
            else wish(part.has(Kind.MORE) ? "more" : "", Verb.MORE, reckon.packs(item), words);
        }
    }

    private String itemWords(Item item, List<Item> items, Part part) {
        List<Sense> product = item.product();
        String named = sentence.words(product.subList(0, 1))
                + sentence.line()
                        .substring(
                                product.get(0).until(),
                                product.get(product.size() - 1).until());
        return item.figure() + " " + named;
    }

    private void wish(Verb verb, Reckoned reckoned, String words) {
        wish("", verb, reckoned, words);
    }

    private void wish(String as, Verb verb, Reckoned reckoned, String words) {
        if (!reckoned.isCertain()) add(new Doubt(reckoned.why(), words));
        else add(new Want(new Wish(verb, reckoned.product(), reckoned.packs(), as), words));
    }

    private void changed(Kind deed, List<Item> items, Part part) {
        Item item = items.get(0);
        boolean bare = items.size() == 1
                && item.figure().isEmpty()
                && item.product().stream().noneMatch(s -> s.is(Kind.CASE));
        boolean counted = items.size() == 1 && !item.figure().isEmpty();
        boolean more = part.has(Kind.MORE);
        boolean skipped = deed == Kind.SKIP
                && part.senses().stream().anyMatch(s -> s.value().equals("or_drop"));
        boolean sets =
                deed == Kind.SET || deed == Kind.ONLY && !part.endsInOnly() || deed == Kind.SET_TO && part.has(Kind.TO);
        if (deed == Kind.DROP) dropping = true;
        if (bare && !more && (deed == Kind.NO || deed == Kind.DROP || skipped))
            wish(Verb.DROP, reckon.product(item), words(part));
        else if (bare && !more && deed == Kind.DOUBLE) wish(Verb.TWICE, reckon.product(item), words(part));
        else if (counted && !more && sets) wish(Verb.SET, reckon.packs(item), words(part));
        else doubt(UNSURE, part);
    }

    private boolean isBeforeColon(Part part) {
        List<Sense> senses = sentence.senses();
        int next = senses.indexOf(part.senses().get(part.senses().size() - 1)) + 1;
        return next < senses.size() && senses.get(next).is(Kind.COLON) && !part.isOfOrder();
    }
}
