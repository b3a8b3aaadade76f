package dawnkettle.command;

import dawnkettle.conf.Configuration;
import dawnkettle.floor.Budget;
import dawnkettle.night.Office;
import dawnkettle.night.PastBooks;
import dawnkettle.plan.Growth;
import dawnkettle.plan.GrowthPoint;
import dawnkettle.plan.GrowthWay;
import dawnkettle.shop.Shop;
import dawnkettle.store.Ledger;
import java.io.PrintWriter;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.IntStream;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Answers from past weeks how far orders can grow, what runs out, and what would help. */
@Command(
        name = "grow",
        mixinStandardHelpOptions = true,
        description =
                "Plan past days with more and more of their orders: when does it no longer go, what runs out, what"
                        + " would help? Takes a few minutes and keeps nothing.")
final class Grow implements Callable<Integer> {
    private static final int EARLIER_MINUTES = 60;
    private static final int MORE_TUBS = 2;

    private final Wiring wiring;

    @Mixin
    private Folder folder;

    @Option(
            names = "--weeks",
            paramLabel = "N",
            defaultValue = "8",
            description = "Weeks behind us to choose the days from. Default: ${DEFAULT-VALUE}")
    private int weeks;

    @Option(
            names = "--to",
            paramLabel = "PERCENT",
            defaultValue = "200",
            description = "How far to go, in steps of 10. Default: ${DEFAULT-VALUE}")
    private int most;

    @Option(
            names = "--decodes",
            paramLabel = "N",
            defaultValue = "2000",
            description = "Runs that may be tried for one plan. Default: ${DEFAULT-VALUE}")
    private long decodes;

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    Grow(Wiring wiring) {
        this.wiring = wiring;
    }

    @Override
    public Integer call() {
        if (weeks < 1 || weeks > 520) throw new Dawnkettle.Refused("--weeks \"" + weeks + "\" is not 1 to 520");
        if (most < 100 || most > 500) throw new Dawnkettle.Refused("--to \"" + most + "\" is not 100 to 500");
        if (decodes < 0) throw new Dawnkettle.Refused("--decodes \"" + decodes + "\" is below 0; write 0 or more");
        Configuration conf = wiring.configuration(folder.conf());
        try (Ledger ledger = folder.ledger(conf)) {
            return tell(wiring.service(conf, ledger, (at, line) -> {}));
        }
    }

    private int tell(Office office) {
        LocalDate today =
                office.clock().instant().atZone(office.shop().house().zone()).toLocalDate();
        List<Growth.Day> days = new PastBooks(office).heaviestFirst(today.minusWeeks(weeks), today);
        PrintWriter out = spec.commandLine().getOut();
        if (days.isEmpty()) {
            out.println("There is no making day in the last " + weeks + " weeks of this ledger; nothing to grow from.");
            out.flush();
            return Dawnkettle.LOOK;
        }
        out.print(page(office.shop(), days));
        out.flush();
        return Dawnkettle.DONE;
    }

    private String page(Shop shop, List<Growth.Day> days) {
        List<Integer> percents = IntStream.rangeClosed(10, most / 10)
                .map(tenth -> 10 * tenth)
                .boxed()
                .toList();
        Progress progress = new Progress(spec.commandLine().getErr());
        Growth growth = new Growth(shop, new Budget(decodes, 1, 60_000), progress::planned);
        GrowthPage page = new GrowthPage(shop.house().zone());
        Growth.Day heaviest = days.get(0);
        Growth.Day ordinary = days.get(days.size() / 2);
        Growth.Answer whole = growth.whole(heaviest, percents);
        page.day("the heaviest of " + days.size() + " making days", whole);
        page.limit(whole, Growth.fullVans(shop, heaviest, percents));
        GrowthPoint tight =
                whole.broken().orElse(whole.points().get(whole.points().size() - 1));
        List<Growth.Answer> answers = new ArrayList<>();
        answers.add(whole);
        for (GrowthWay way : ways(shop, tight)) answers.add(growth.untilBroken(way, heaviest, percents));
        if (!ordinary.equals(heaviest)) answers.add(growth.untilBroken(GrowthWay.AS_IT_IS, ordinary, percents));
        page.ways(answers);
        progress.done();
        if (PastBooks.isRebuilt(heaviest) || PastBooks.isRebuilt(ordinary)) page.rebuilt();
        return page.text() + "A second shop that takes half of the orders carries twice as far as one.\n";
    }

    private static List<GrowthWay> ways(Shop shop, GrowthPoint tight) {
        List<GrowthWay> ways = new ArrayList<>();
        for (String stage : Growth.stagesToWiden(shop, tight)) ways.add(GrowthWay.oneMore(stage));
        GrowthWay earlier = GrowthWay.startEarlier(EARLIER_MINUTES);
        GrowthWay tubs = GrowthWay.moreTubs(MORE_TUBS);
        ways.add(earlier);
        ways.add(tubs);
        ways.add(earlier.and(tubs));
        return ways;
    }

    /** Where somebody sits at a terminal, a line that counts the plans; nothing in a pipe. */
    private static final class Progress {
        private final PrintWriter err;
        private final boolean isSeen = System.console() != null;

        Progress(PrintWriter err) {
            this.err = err;
        }

        void planned(int count, String way, Growth.Day day, int percent) {
            if (!isSeen) return;
            err.print(
                    "\r\033[Kplan " + count + ": " + way + ", " + day.book().productionDate() + ", " + percent + " %");
            err.flush();
        }

        void done() {
            if (!isSeen) return;
            err.print("\r\033[K");
            err.flush();
        }
    }
}
