package dawnkettle;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.label.ElementString;
import dawnkettle.label.LabelText;
import dawnkettle.mail.Arrived;
import dawnkettle.mail.Mailbox;
import dawnkettle.night.Edges;
import dawnkettle.night.MailIn;
import dawnkettle.night.OrderSource;
import dawnkettle.store.Ledger;
import dawnkettle.store.LedgerWire;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The campaign's own check: bugs put in on purpose, between ledger and file, at the doors, in the ledger's rules. Each must be
 * noticed, and by the law that it breaks; otherwise the campaign's zeros mean nothing.
 */
class PlantedBugsTest {
    /** Some show only in a night in which a file of a certain kind is dropped. */
    private static final int NIGHTS_AT_MOST = 12;

    /** A bug, the law that must notice it, and the mishap it needs. */
    record Bug(String name, String law, List<Mishap> mishaps, Plant plant) {
        @Override
        public String toString() {
            return name + ": " + law;
        }
    }

    static Stream<Bug> bugs() {
        return Stream.of(
                said(
                        "a sheet's or label's intent is not committed before it leaves",
                        "I3",
                        "UPDATE effect SET state = 'sending'",
                        sql -> null),
                said(
                        "a mail's intent is not committed before it leaves",
                        "I5",
                        "UPDATE outbox SET state = 'sending'",
                        sql -> null),
                said("labels in flight are not noted", "I3", "INSERT INTO label_in_flight", sql -> null),
                said("what became of a sheet is not committed", "I3", "UPDATE effect SET state = ?", sql -> null),
                opened(
                        "a step that is done is due again, and its unique key and rule are missing",
                        "I6",
                        "DROP INDEX step_done_once; DROP TRIGGER step_moves_on",
                        "SELECT * FROM step WHERE step = ?",
                        sql -> sql.replace(
                                "SELECT *",
                                "SELECT step, business_date, revision, replace(state, 'done', 'due') AS state, due_at, attempts, changed_at, note")),
                doors("a mail is sent twice", "I5", PlantedBugsTest::sendingTwice),
                said(
                        "the mark on a mail that goes again is missing",
                        "I5",
                        "maybe_sent = max(maybe_sent, ?)",
                        sql -> sql.replace("max(maybe_sent, ?)", "min(0, ?)"),
                        new Mishap(Mishap.Kind.POST_LOSES_ITS_250, 1, 1)),
                said(
                        "the mark on a mail that was under way in a power cut is missing",
                        "I5",
                        "maybe_sent = 1",
                        sql -> sql.replace("maybe_sent = 1", "maybe_sent = 0"),
                        new Mishap(Mishap.Kind.POWER_CUT_AFTER_A_MAIL, 1, 1)),
                said(
                        "the mark on a sheet that comes again is missing",
                        "I3",
                        "FROM effect_event WHERE key = ?",
                        sql -> sql.replace("count(*)", "0 * count(*)"),
                        new Mishap(Mishap.Kind.PAPER_DIES_AFTER_TAKING, 2, 1)),
                said(
                        "labels in doubt are forgotten",
                        "I3",
                        "SELECT * FROM label_group WHERE lot = ? AND product = ?",
                        sql -> sql.replace("ORDER BY", "AND outcome <> 'uncertain' ORDER BY"),
                        new Mishap(Mishap.Kind.LABELS_SILENT_BUT_OUT, 1, 1)),
                said(
                        "labels in flight in a power cut are forgotten",
                        "I3",
                        "SELECT * FROM label_in_flight",
                        sql -> sql.replace("WHERE", "WHERE 0 AND"),
                        new Mishap(Mishap.Kind.POWER_CUT_BETWEEN_LABELS, 2, 1)),
                said("an order line is acknowledged and not kept", "I1", "INSERT INTO order_line", sql -> null),
                said(
                        "an order line is kept with other packs",
                        "I1",
                        "INSERT INTO order_line",
                        sql -> sql.replace("(?, ?, ?, ?, ?,", "(?, ?, ?, ?, ? + 1,")),
                both(
                        "a file that is read again counts its amendments again",
                        "I1",
                        "INSERT INTO dropped_file",
                        PlantedBugsTest::acknowledgingAtTheSecondTry),
                said(
                        "a mail that came before is not known again",
                        "I9",
                        "FROM mail_in WHERE sha256 = ?",
                        sql -> sql.replace("count(*)", "0 * count(*)"),
                        new Mishap(Mishap.Kind.MAILBOX_GIVES_NEW_PLACES, 36, 1)),
                said("a mail's end is not noted", "I1", "INSERT INTO mail_in", sql -> null),
                doors("a forged mail counts", "I9", PlantedBugsTest::trustingAnySender),
                doors("an order file never comes to its end", "I9", PlantedBugsTest::neverAcknowledging),
                labels("a label is best before the wrong day", "I7"),
                doors(
                        "a label is printed though the clock is in doubt",
                        "I7",
                        PlantedBugsTest::trustingAnyClock,
                        new Mishap(Mishap.Kind.CLOCK_BACK, 1_150, 10_000)),
                held("a held lot is labelled", "I7", "kind IN ('held', 'released'"),
                muted(
                        "a plan gives more than was ordered",
                        "I2",
                        "INSERT INTO plan_allocation",
                        sql -> sql.replace("(?, ?, ?, ?, ?, ?, ?, ?, ?,", "(?, ?, ?, ?, ?, ?, ?, ?, ? + 1,")),
                muted("a lot is made of nothing", "I4", "INSERT INTO plan_batch_tub", sql -> null),
                opened(
                        "a rule is missing and history is lost",
                        "I8",
                        "DROP TRIGGER step_event_is_kept; CREATE TRIGGER planted AFTER INSERT ON step_event WHEN NEW.step = 'plan' "
                                + "AND NEW.state = 'done' BEGIN DELETE FROM step_event WHERE step = 'soak call'; END",
                        "no statement",
                        sql -> sql),
                opened("the full sync is missing", "S", "PRAGMA synchronous = OFF", "no statement", sql -> sql),
                opened("references are not minded", "S", "PRAGMA foreign_keys = OFF", "no statement", sql -> sql));
    }

    @ParameterizedTest
    @MethodSource("bugs")
    void a_planted_bug_is_noticed_by_the_law_it_breaks(Bug bug) throws Exception {
        List<String> noticed = new ArrayList<>();
        for (long seed = 1; seed <= NIGHTS_AT_MOST && noticed.isEmpty(); seed++)
            try (FaultyNight night = new FaultyNight(seed, bug.mishaps(), bug.plant())) {
                noticed.addAll(night.play());
            }
        assertThat(noticed)
                .as(bug.name())
                .anySatisfy(broken -> assertThat(broken).startsWith(bug.law()));
    }

    @Test
    void at_least_twenty_are_planted() {
        assertThat(bugs().map(Bug::name)).doesNotHaveDuplicates().hasSizeGreaterThanOrEqualTo(20);
    }

    /** Without a bug and without a mishap nothing is noticed. */
    @Test
    void a_sound_night_is_not_blamed() throws Exception {
        try (FaultyNight night = new FaultyNight(1, List.of(), Plant.NONE)) {
            assertThat(night.play()).isEmpty();
        }
    }

    /** The ledger says something else than it was told to say. */
    private static Bug said(String name, String law, String part, UnaryOperator<String> instead, Mishap... mishaps) {
        return opened(name, law, "", part, instead, mishaps);
    }

    private static Bug opened(
            String name, String law, String atOpening, String part, UnaryOperator<String> instead, Mishap... mishaps) {
        return new Bug(name, law, List.of(mishaps), new Plant() {
            private boolean isDone;

            @Override
            void opened(Ledger ledger) {
                if (!atOpening.isEmpty() && (!isDone || atOpening.startsWith("PRAGMA")))
                    LedgerWire.run(ledger, atOpening);
                isDone = true;
            }

            @Override
            String instead(String sql) {
                return has(sql, part) ? instead.apply(sql) : sql;
            }
        });
    }

    private static boolean has(String sql, String part) {
        return sql.replaceAll("\\s+", " ").contains(part);
    }

    /** The same with the service's own conservation laws struck out, which would refuse such a plan. */
    private static Bug muted(String name, String law, String part, UnaryOperator<String> instead) {
        return new Bug(name, law, List.of(), new Plant() {
            @Override
            String instead(String sql) {
                if (has(sql, "FROM plan_in_force WHERE production_date = ?1")) return sql + " LIMIT 0";
                return has(sql, part) ? instead.apply(sql) : sql;
            }
        });
    }

    private static Bug held(String name, String law, String part) {
        return new Bug(name, law, List.of(), new Plant() {
            @Override
            String instead(String sql) {
                return has(sql, part) ? sql.replace("WHERE", "WHERE 0 AND") : sql;
            }

            @Override
            boolean isHolding() {
                return true;
            }
        });
    }

    private static Bug doors(String name, String law, UnaryOperator<Edges> edges, Mishap... mishaps) {
        return new Bug(name, law, List.of(mishaps), new Plant() {
            @Override
            Edges edges(Edges real) {
                return edges.apply(real);
            }
        });
    }

    private static Bug both(String name, String law, String part, UnaryOperator<Edges> edges) {
        return new Bug(name, law, List.of(), new Plant() {
            @Override
            String instead(String sql) {
                return has(sql, part) ? null : sql;
            }

            @Override
            Edges edges(Edges real) {
                return edges.apply(real);
            }
        });
    }

    private static Bug labels(String name, String law) {
        Pattern date = Pattern.compile("\\(15\\)(\\d{5})(\\d)");
        return new Bug(name, law, List.of(), new Plant() {
            @Override
            LabelText printed(LabelText words) {
                if (words.elements().isEmpty()) return words;
                Matcher found = date.matcher(words.elements().get().toString());
                if (!found.find()) return words;
                int last = (Integer.parseInt(found.group(2)) + 1) % 9;
                return new LabelText(
                        words.fields(),
                        Optional.of(ElementString.read(found.replaceFirst(
                                "(15)" + found.group(1).substring(0, 4) + "0" + Math.max(1, last)))));
            }
        });
    }

    private static Edges sendingTwice(Edges real) {
        return new Edges(
                real.senses(),
                real.paper(),
                real.labels(),
                new Edges.MailDesk(
                        (mail, date) -> {
                            real.mail().post().send(mail, date);
                            real.mail().post().send(mail, date);
                        },
                        real.mail().charts(),
                        real.mail().enclosures()),
                real.plans());
    }

    private static Edges trustingAnyClock(Edges real) {
        return with(
                real, new Edges.Senses(real.senses().orders(), real.senses().thermometer(), now -> Optional.empty()));
    }

    private static Edges trustingAnySender(Edges real) {
        MailIn in = real.mail().in();
        Mailbox box = (isKnown, taker) -> in.mailbox().look(isKnown, mail -> taker.test(vouchedFor(mail)));
        return real.takingMail(new MailIn(box, in.settings(), in.tables(), in.words()));
    }

    private static Arrived vouchedFor(Arrived mail) {
        Arrived.Sender says = mail.sender();
        return new Arrived(
                mail.place(),
                mail.marks(),
                new Arrived.Sender(says.from(), Optional.empty(), says.to(), says.automatic()),
                mail.content(),
                mail.refused());
    }

    private static Edges with(Edges real, Edges.Senses senses) {
        return new Edges(senses, real.paper(), real.labels(), real.mail(), real.plans());
    }

    private static Edges neverAcknowledging(Edges real) {
        return acknowledging(real, Integer.MAX_VALUE);
    }

    private static Edges acknowledgingAtTheSecondTry(Edges real) {
        return acknowledging(real, 1);
    }

    private static Edges acknowledging(Edges real, int without) {
        OrderSource source = now -> real.senses().orders().look(now).stream()
                .<OrderSource.Parcel>map(parcel -> new Reluctant(parcel, without))
                .toList();
        return with(
                real,
                new Edges.Senses(
                        source, real.senses().thermometer(), real.senses().time()));
    }

    /** Does not come to its end the first times. */
    private record Reluctant(OrderSource.Parcel parcel, int without) implements OrderSource.Parcel {
        private static final java.util.Map<String, Integer> ASKED = new java.util.HashMap<>();

        @Override
        public String name() {
            return parcel.name();
        }

        @Override
        public String sha256() {
            return parcel.sha256();
        }

        @Override
        public OrderSource.Contents read(
                dawnkettle.shop.Shop shop, dawnkettle.book.OrderBook book, java.time.Instant now) {
            return parcel.read(shop, book, now);
        }

        @Override
        public void acknowledge(OrderSource.Contents contents) {
            int asked = ASKED.merge(sha256() + System.identityHashCode(Thread.currentThread()), 1, Integer::sum);
            if (asked > without) parcel.acknowledge(contents);
        }
    }
}
