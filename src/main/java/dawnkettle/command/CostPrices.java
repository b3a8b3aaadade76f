package dawnkettle.command;

import dawnkettle.conf.Configuration;
import dawnkettle.cost.HoldMargin;
import dawnkettle.cost.HoldMargin.Change;
import dawnkettle.cost.HoldMargin.Held;
import dawnkettle.cost.HoldMargin.Proposed;
import dawnkettle.cost.Sale;
import dawnkettle.cost.WeekBook;
import dawnkettle.mail.PriceWords;
import dawnkettle.night.GatherBook;
import dawnkettle.night.Office;
import dawnkettle.shop.Customer;
import dawnkettle.store.Ledger;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What prices must be if beans, oil or wages change. It proposes, and changes nothing. */
@Command(
        name = "prices",
        mixinStandardHelpOptions = true,
        description = {
            "Say what each price must be to hold the margin of the last whole week if beans, oil or wages change.",
            "It only proposes: a price changes where you write it, in prices.csv."
        },
        footer = {"", "Example: dawnkettle cost prices --beans 1.40 --from 2027-01-04 --out letters"})
final class CostPrices implements Callable<Integer> {
    private static final int DAYS_OF_NOTICE = 28;

    private final Wiring wiring;

    @Mixin
    private Folder folder;

    @Option(
            names = "--beans",
            paramLabel = "PRICE",
            description = "What a kilogram of beans would cost, as 1.40, or by how much more, as +40%%.")
    private String beans;

    @Option(names = "--oil", paramLabel = "PERCENT", description = "By how much oil would change, as +10%% or -5%%.")
    private String oil;

    @Option(names = "--wages", paramLabel = "PERCENT", description = "By how much wages would change, as +4%%.")
    private String wages;

    @Option(
            names = "--hold",
            defaultValue = "money",
            description = "What is held: money (as much a pack as now) or percent. Default ${DEFAULT-VALUE}.")
    private Held held;

    @Option(
            names = "--from",
            paramLabel = "DATE",
            description = "First day of the new prices; four weeks from now where it is left out.")
    private LocalDate from;

    @Option(names = "--day", paramLabel = "DATE", description = "The week before this day's; today's where left out.")
    private LocalDate day;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "Write rows for prices.csv and a letter a customer there.")
    private Path out;

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    CostPrices(Wiring wiring) {
        this.wiring = wiring;
    }

    @Override
    public Integer call() {
        Configuration conf = wiring.configuration(folder.conf());
        try (Ledger ledger = folder.ledger(conf)) {
            Office office = wiring.service(conf, ledger, (at, line) -> {});
            LocalDate today = LocalDate.ofInstant(
                    office.clock().instant(), conf.shop().house().zone());
            WeekBook book = new GatherBook(office)
                    .before(Optional.ofNullable(day).orElse(today))
                    .orElseThrow(() -> new Dawnkettle.Refused(
                            "no week before has anything made in it; name a later day with --day"));
            LocalDate first = Optional.ofNullable(from).orElse(today.plusDays(DAYS_OF_NOTICE));
            tell(book, first);
        }
        return Dawnkettle.DONE;
    }

    private void tell(WeekBook book, LocalDate first) {
        HoldMargin hold =
                new HoldMargin(book.now(), book.trade().days(), book.trade().prices());
        Factors factors =
                new Factors(book.now().all().beanPrice(), book.shop().house().currency());
        Change change =
                new Change(factors.beans(beans), factors.percent("--oil", oil), factors.percent("--wages", wages));
        List<Proposed> proposed = hold.prices(change, held, first);
        PriceWords words = new PriceWords(book.shop(), first, proposed);
        PrintWriter terminal = spec.commandLine().getOut();
        terminal.print(
                "From " + first + ", to hold the margin in " + held.name().toLowerCase(java.util.Locale.ROOT)
                        + ", by the costs of the week from " + book.now().monday() + " (beans "
                        + book.now().all().beanPrice() + " a kg).\nNothing is changed by this.\n\n" + words.list());
        if (!book.trade().sales().isEmpty())
            terminal.print("\nBy the deliveries of that week\n"
                    + words.customers(hold.customers(proposed, book.trade().sales())));
        terminal.flush();
        if (out != null) write(book, words);
    }

    private void write(WeekBook book, PriceWords words) {
        try {
            Files.createDirectories(out);
            Files.writeString(out.resolve("prices-proposed.csv"), words.rows());
            for (Customer customer : book.shop().customers()) {
                Set<String> bought = new TreeSet<>();
                for (Sale sale : book.trade().sales())
                    if (sale.customer().equals(customer.code()) && !sale.isCredit()) bought.add(sale.product());
                String letter = words.letter(customer, bought);
                if (!letter.isEmpty()) Files.writeString(out.resolve("letter-" + customer.code() + ".txt"), letter);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Reads what changes: a price, or percent. */
    record Factors(BigDecimal beanPrice, java.util.Currency currency) {
        private static final String PERCENT = "[+-][0-9]{1,3}([.][0-9]{1,2})?%";

        BigDecimal beans(String text) {
            if (text == null || text.endsWith("%")) return percent("--beans", text);
            if (!text.matches("[0-9]{1,6}([.][0-9]{1,4})?"))
                throw new Dawnkettle.Refused("--beans \"" + text + "\" is no price of a kilogram; write it in "
                        + currency.getCurrencyCode() + " alone, as 1.40, or as +40%");
            if (beanPrice.signum() == 0)
                throw new Dawnkettle.Refused(
                        "--beans \"" + text + "\" cannot be compared: the week used no beans; name another --day");
            BigDecimal price = new BigDecimal(text);
            if (price.signum() == 0)
                throw new Dawnkettle.Refused("--beans \"" + text + "\" is nothing; write a price above 0, as 1.40");
            return price.divide(beanPrice, java.math.MathContext.DECIMAL64);
        }

        BigDecimal percent(String option, String text) {
            if (text == null) return BigDecimal.ONE;
            if (!text.matches(PERCENT))
                throw new Dawnkettle.Refused(
                        option + " \"" + text + "\" is no change in percent; write it as +40% or -5%");
            BigDecimal factor =
                    BigDecimal.ONE.add(new BigDecimal(text.substring(0, text.length() - 1)).movePointLeft(2));
            if (factor.signum() <= 0)
                throw new Dawnkettle.Refused(
                        option + " \"" + text + "\" leaves no price; write less than that, as -50%");
            return factor;
        }
    }
}
