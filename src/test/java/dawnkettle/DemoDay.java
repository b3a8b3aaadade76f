package dawnkettle;

import dawnkettle.book.ClosedBook;
import dawnkettle.book.OrderBook;
import dawnkettle.conf.Configuration;
import dawnkettle.conf.ReadConfiguration;
import dawnkettle.floor.Budget;
import dawnkettle.intake.DropFolder;
import dawnkettle.intake.Reading;
import dawnkettle.measure.Celsius;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Evening;
import dawnkettle.plan.PlanDay;
import dawnkettle.plan.SoakCall;
import dawnkettle.plan.Temperatures;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;

/** The demonstration shop's book on a day, planned without a ledger. */
public final class DemoDay {
    public static final Path CONF = Path.of("conf");

    public final Configuration conf = ReadConfiguration.from(CONF);
    private final LocalDate productionDate;

    public DemoDay(LocalDate productionDate) {
        this.productionDate = productionDate;
    }

    public Instant at(LocalDate day, LocalTime time) {
        return day.atTime(time).atZone(conf.shop().house().zone()).toInstant();
    }

    private LocalDate dayBefore() {
        return conf.shop().calendar().previous(productionDate);
    }

    public Instant closesAt() {
        return at(dayBefore(), conf.night().times().close());
    }

    private OrderBook book() {
        try {
            Path folder = Files.createTempDirectory("drop");
            Files.copy(CONF.resolve("rehearsal/orders.csv"), folder.resolve("orders.csv"));
            OrderBook empty = new OrderBook(conf.shop(), List.of(), List.of(), conf.standing(), List.of());
            Instant now = at(dayBefore(), LocalTime.of(4, 0));
            Files.setLastModifiedTime(
                    folder.resolve("orders.csv"), java.nio.file.attribute.FileTime.from(now.minusSeconds(3600)));
            Reading reading =
                    new DropFolder(folder, Duration.ZERO).look(now).get(0).read(conf.shop(), empty, now);
            return new OrderBook(conf.shop(), reading.lines(), reading.amendments(), conf.standing(), List.of());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Evening evening(Instant now, Celsius room, Optional<SoakCall> call, long decodes) {
        ClosedBook closed = book().close(productionDate, now);
        return new Evening(
                closed,
                new Evening.Outlook(
                        book().close(conf.shop().calendar().next(productionDate), now)
                                .lines(),
                        List.of()),
                Evening.Larder.EMPTY,
                new Evening.SoakRoom(
                        new Temperatures(room, conf.shop().climate().tap(productionDate.getMonth()), "set by hand"),
                        call,
                        List.of()),
                Evening.Committed.NOTHING,
                now,
                new Budget(decodes, 1, 60_000));
    }

    public SoakCall call(Celsius room, long decodes) {
        Instant now = at(dayBefore(), conf.night().times().soakCall());
        return PlanDay.soakCall(conf.shop(), evening(now, room, Optional.empty(), decodes), closesAt());
    }

    public DayPlan plan(Celsius room, long decodes) {
        SoakCall call = call(room, decodes);
        return PlanDay.of(
                conf.shop(), evening(closesAt(), room, call.isEmpty() ? Optional.empty() : Optional.of(call), decodes));
    }
}
