package dawnkettle.floor;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * Days like those of a tofu workshop, drawn from a seed: batches through grinder, cooker, press, vat, mould, bath and packing,
 * fried pouches twice over the fryer, vans at four times. Draws are in a fixed order, so that a day can be drawn again.
 */
final class WorkshopDay {
    private static final String[] FAMILIES = {"soymilk", "flavoured", "medium", "firm", "extra", "herb", "pouch"};
    private static final double[] MIX = {0.15, 0.06, 0.22, 0.25, 0.12, 0.06, 0.14};
    private static final double[] SHARE = {0.15, 0.25, 0.33, 0.27};
    /** Minutes after 02:30 at which the vans leave: 07:00, 09:30, 13:00, 20:00. */
    private static final int[] VANS = {270, 420, 630, 1050};

    private static final int[] WEIGHTS = {3, 2, 2, 1};
    private static final int SOYMILK = 0;
    private static final int MEDIUM = 2;
    private static final int EXTRA = 4;
    private static final int HERB = 5;
    private static final int POUCH = 6;

    private final int batches;
    private final SplittableRandom random;
    private final double stretch;

    private WorkshopDay(int batches, long seed, int tightPercent) {
        this.batches = batches;
        random = new SplittableRandom(seed * 1_000_003L + batches);
        stretch = Math.max(1.0, batches / 45.0) * 100.0 / tightPercent;
    }

    /** A day of seed 1. */
    static FloorDay of(int batches, int workers, int tightPercent) {
        return of(batches, workers, tightPercent, 1);
    }

    static FloorDay of(int batches, int workers, int tightPercent, long seed) {
        return new WorkshopDay(batches, seed, tightPercent).day(workers);
    }

    private FloorDay day(int workers) {
        int horizon = (batches * 30 + 800 + 63) / 64 * 64;
        var open = List.of(new Window(0, horizon));
        var stations = new ArrayList<Station>();
        String[] stages = {
            "grinder 2",
            "cooker 2",
            "press 1",
            "vat 4",
            "mould 6",
            "bath 8",
            "box 1",
            "bench 1",
            "chill 2",
            "bottle 1",
            "fryer 1",
            "rack 4"
        };
        for (String stage : stages) {
            String[] words = stage.split(" ");
            stations.add(new Station(words[0], words[0], Integer.parseInt(words[1]), 0, open));
        }
        var dues = IntStream.range(0, VANS.length)
                .mapToObj(van -> new Due("van" + van, (int) Math.round(VANS[van] * stretch / 5) * 5, WEIGHTS[van]))
                .toList();
        var hands = List.of(new Hands(new Window(0, horizon), workers * 2));
        return new FloorDay(stations, hands, changeovers(), dues, jobs(), horizon);
    }

    private static List<Changeover> changeovers() {
        var changeovers = new ArrayList<Changeover>();
        for (int from = 0; from < FAMILIES.length; from++)
            for (int to = 0; to < FAMILIES.length; to++) {
                if (from == to) continue;
                changeovers.add(new Changeover("press", FAMILIES[from], FAMILIES[to], washMinutes(from, to)));
                changeovers.add(new Changeover("box", FAMILIES[from], FAMILIES[to], 5));
            }
        return changeovers;
    }

    private static int washMinutes(int from, int to) {
        boolean flavourChanges = isFlavoured(from) != isFlavoured(to);
        return flavourChanges || (from >= MEDIUM && to < MEDIUM) ? 20 : 5;
    }

    private static boolean isFlavoured(int family) {
        return family == SOYMILK + 1 || family == HERB;
    }

    private List<Job> jobs() {
        int[] family = IntStream.range(0, batches).map(batch -> drawFamily()).toArray();
        var jobs = new ArrayList<Job>();
        int ready = 0;
        int spoilt = 0;
        for (int batch = 0; batch < batches; batch++) {
            if (batch % 6 == 0) {
                ready = Math.max(0, (int) (batch * 12.5) - 30 - random.nextInt(120)) / 15 * 15;
                spoilt = ready + (int) (480 * stretch) + random.nextInt(60);
            }
            List<String> due = List.of("van" + van(batch));
            String name = FAMILIES[family[batch]];
            var steps = operations(family[batch]);
            jobs.add(new Job("B" + batch, name, ready, spoilt, steps, List.of(), due, List.of()));
        }
        return jobs;
    }

    private int van(int batch) {
        int van = 0;
        for (long before = Math.round(SHARE[0] * batches); van < 3 && batch >= before; ) {
            van++;
            before += Math.round(SHARE[van] * batches);
        }
        return van;
    }

    private int drawFamily() {
        double drawn = random.nextDouble();
        double sum = 0;
        for (int family = 0; family < POUCH; family++) {
            sum += MIX[family];
            if (drawn < sum) return family;
        }
        return POUCH;
    }

    private List<Operation> operations(int family) {
        var steps = new ArrayList<Operation>();
        steps.add(step("grinder", 11 + random.nextInt(3), 1, Operation.ANY_WAIT));
        steps.add(step("cooker", 23 + random.nextInt(5), 1, 10));
        steps.add(step("press", 9 + random.nextInt(3), 2, 10));
        if (family < MEDIUM) {
            steps.add(step("chill", 30, 0, 15));
            steps.add(step("bottle", 12 + random.nextInt(7), 2, Operation.ANY_WAIT));
            return steps;
        }
        steps.add(step("vat", family == POUCH ? 20 : 23 + random.nextInt(6), 2, 10));
        steps.add(step("mould", mouldMinutes(family), 0, 5));
        if (family == POUCH) fry(steps);
        else cool(steps);
        return steps;
    }

    private static int mouldMinutes(int family) {
        if (family == MEDIUM || family == POUCH) return 20;
        return family == EXTRA ? 50 : 35;
    }

    private static void fry(List<Operation> steps) {
        steps.add(step("bench", 8, 2, 60));
        steps.add(step("fryer", 8, 2, 30));
        steps.add(step("fryer", 7, 2, 15));
        steps.add(step("rack", 30, 0, 10));
        steps.add(step("bench", 8, 2, Operation.ANY_WAIT));
    }

    private void cool(List<Operation> steps) {
        steps.add(step("bath", 60, 0, 15));
        if (random.nextInt(100) < 65) steps.add(step("box", 7 + random.nextInt(4), 4, Operation.ANY_WAIT));
        else steps.add(step("bench", 10 + random.nextInt(5), 4, Operation.ANY_WAIT));
    }

    private static Operation step(String stage, int minutes, int halfHands, int longestWait) {
        return new Operation(stage, minutes, halfHands, longestWait, 0);
    }
}
