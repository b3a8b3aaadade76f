package dawnkettle.floor;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CumulativeConstraint;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.IntervalVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import com.google.ortools.sat.Literal;
import com.google.ortools.util.Domain;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A day written down for a constraint solver: it shares no code with the engine but the words of the day itself. */
final class ExactModel {
    /** One spoilt minute outweighs all lateness, one late minute any finish. */
    private static final long SPOILT = 100_000_000;

    private static final long LATE = 10_000;

    private final FloorDay day;
    private final int latestFinish;
    final CpModel model = new CpModel();
    final Map<String, List<IntVar>> starts = new HashMap<>();
    /** The options of each operation: a station, and a place where places matter. */
    final Map<String, List<List<Option>>> options = new HashMap<>();

    private final Map<String, List<Option>> onPlace = new HashMap<>();
    private final Map<String, CumulativeConstraint> onStation = new HashMap<>();
    private final CumulativeConstraint hands;
    private final LinearExprBuilder objective = LinearExpr.newBuilder();

    /** An operation on a station, if it is done there. */
    record Option(Job job, int step, Station station, int place, BoolVar chosen, IntVar start) {
        int minutes() {
            return job.operations().get(step).minutes();
        }
    }

    /** @param latestFinish no run that ends later is looked for */
    ExactModel(FloorDay day, int latestFinish) {
        this.day = day;
        this.latestFinish = latestFinish;
        hands = model.addCumulative(mostHands());
        lackOfHands();
        for (Job job : day.jobs()) addJob(job);
        for (Job job : day.jobs()) link(job);
        onPlace.values().forEach(this::addPlace);
        addObjective();
    }

    private int mostHands() {
        int most = 0;
        for (int minute = 0; minute < day.horizon(); minute++) most = Math.max(most, handsAt(minute));
        return most;
    }

    private int handsAt(int minute) {
        return day.hands().stream()
                .filter(of -> of.window().fromInclusive() <= minute
                        && minute < of.window().untilExclusive())
                .mapToInt(Hands::halves)
                .sum();
    }

    private void lackOfHands() {
        int most = mostHands();
        for (int from = 0; from < day.horizon(); ) {
            int until = from + 1;
            while (until < day.horizon() && handsAt(until) == handsAt(from)) until++;
            if (handsAt(from) < most)
                hands.addDemand(model.newFixedInterval(from, until - from, ""), most - handsAt(from));
            from = until;
        }
    }

    private void addJob(Job job) {
        var own = new ArrayList<IntVar>();
        var ownOptions = new ArrayList<List<Option>>();
        for (int step = 0; step < job.operations().size(); step++) {
            Operation operation = job.operations().get(step);
            int earliest = step == 0 ? job.release() : 0;
            IntVar start = model.newIntVar(
                    earliest, Math.max(earliest, latestFinish - operation.minutes()), job.id() + "." + step);
            own.add(start);
            ownOptions.add(optionsOf(job, step, start));
            if (operation.minutes() > 0 && operation.halfHands() > 0)
                hands.addDemand(model.newFixedSizeIntervalVar(start, operation.minutes(), ""), operation.halfHands());
            if (step > 0)
                follow(own.get(step - 1), job.operations().get(step - 1).minutes(), start, operation.longestWait());
        }
        starts.put(job.id(), own);
        options.put(job.id(), ownOptions);
    }

    private void follow(IntVar before, int minutes, IntVar start, int longestWait) {
        var between = LinearExpr.newBuilder().add(start).addTerm(before, -1).build();
        if (longestWait == Operation.ANY_WAIT) model.addGreaterOrEqual(between, minutes);
        else model.addLinearConstraint(between, minutes, (long) minutes + longestWait);
    }

    private List<Option> optionsOf(Job job, int step, IntVar start) {
        var all = new ArrayList<Option>();
        for (Station station : day.stations()) {
            if (!station.stage().equals(job.operations().get(step).stage())) continue;
            int places = needsPlaces(station) ? station.places() : 1;
            for (int place = 0; place < places; place++)
                all.add(new Option(job, step, station, place, model.newBoolVar(""), start));
        }
        model.addExactlyOne(all.stream().map(Option::chosen).toArray(Literal[]::new));
        all.forEach(this::occupy);
        return all;
    }

    private boolean needsPlaces(Station station) {
        return station.places() > 1
                && day.changeovers().stream()
                        .anyMatch(
                                changeover -> changeover.station().equals(station.code()) && changeover.minutes() > 0);
    }

    private void occupy(Option option) {
        Operation operation = option.job.operations().get(option.step);
        int minutes = operation.minutes();
        long[][] open = option.station.open().stream()
                .filter(window -> window.untilExclusive() - minutes >= window.fromInclusive())
                .map(window -> new long[] {window.fromInclusive(), window.untilExclusive() - minutes})
                .toArray(long[][]::new);
        if (open.length == 0) model.addEquality(option.chosen, 0);
        else
            model.addLinearExpressionInDomain(option.start, Domain.fromIntervals(open))
                    .onlyEnforceIf(option.chosen);
        if (minutes == 0) return;
        Station station = option.station;
        if (station.places() == 1 || needsPlaces(station)) {
            onPlace.computeIfAbsent(station.code() + "/" + option.place, key -> new ArrayList<>())
                    .add(option);
            return;
        }
        long has = station.isShared() ? station.capacity() : station.places();
        long takes = station.isShared() ? operation.load() : 1;
        onStation
                .computeIfAbsent(station.code(), key -> model.addCumulative(has))
                .addDemand(interval(option), takes);
    }

    private IntervalVar interval(Option option) {
        return model.newOptionalFixedSizeIntervalVar(option.start, option.minutes(), option.chosen, "");
    }

    private void addPlace(List<Option> here) {
        model.addNoOverlap(here.stream().map(this::interval).toArray(IntervalVar[]::new));
        for (int one = 0; one < here.size(); one++)
            for (int other = one + 1; other < here.size(); other++) disjoin(here.get(one), here.get(other));
    }

    private void disjoin(Option one, Option other) {
        int forward = minutesBetween(one, other);
        int backward = minutesBetween(other, one);
        if (forward == 0 && backward == 0) return;
        BoolVar first = model.newBoolVar("");
        after(one, other, forward).onlyEnforceIf(new Literal[] {first, one.chosen, other.chosen});
        after(other, one, backward).onlyEnforceIf(new Literal[] {first.not(), one.chosen, other.chosen});
    }

    private com.google.ortools.sat.Constraint after(Option before, Option later, int changeover) {
        return model.addGreaterOrEqual(
                LinearExpr.newBuilder()
                        .add(later.start)
                        .addTerm(before.start, -1)
                        .build(),
                (long) before.minutes() + changeover);
    }

    private int minutesBetween(Option before, Option later) {
        return day.changeovers().stream()
                .filter(changeover -> changeover.station().equals(before.station.code())
                        && changeover.fromFamily().equals(before.job.family())
                        && changeover.toFamily().equals(later.job.family()))
                .mapToInt(Changeover::minutes)
                .max()
                .orElse(0);
    }

    private void link(Job job) {
        IntVar first = starts.get(job.id()).get(0);
        for (Job.After after : job.after()) {
            Job parent = day.jobs().stream()
                    .filter(other -> other.id().equals(after.job()))
                    .findFirst()
                    .orElseThrow();
            int last = parent.operations().size() - 1;
            follow(
                    starts.get(parent.id()).get(last),
                    parent.operations().get(last).minutes(),
                    first,
                    after.longestWait());
        }
    }

    private void addObjective() {
        IntVar finish = model.newIntVar(0, latestFinish, "finish");
        for (Job job : day.jobs()) {
            int last = job.operations().size() - 1;
            // Any step may end last where a later one takes no time.
            model.addLessOrEqual(end(job, last), finish);
            IntVar spoilt = model.newIntVar(0, latestFinish, "");
            model.addGreaterOrEqual(
                    LinearExpr.newBuilder()
                            .add(spoilt)
                            .addTerm(starts.get(job.id()).get(0), -1)
                            .build(),
                    -job.latestStart());
            objective.addTerm(spoilt, SPOILT);
        }
        for (Due due : day.dues()) {
            IntVar late = model.newIntVar(0, latestFinish, "late " + due.code());
            for (Job job : day.jobs())
                if (job.dues().contains(due.code()))
                    model.addLessOrEqual(
                            end(job, job.operations().size() - 1),
                            LinearExpr.newBuilder().add(late).add(due.minute()).build());
            objective.addTerm(late, LATE * due.weight());
        }
        objective.add(finish);
        model.minimize(objective.build());
    }

    private LinearExpr end(Job job, int step) {
        return LinearExpr.newBuilder()
                .add(starts.get(job.id()).get(step))
                .add(job.operations().get(step).minutes())
                .build();
    }

    void hint(List<Placement> placements) {
        for (Placement placement : placements) {
            model.addHint(starts.get(placement.job()).get(placement.operation()), placement.start());
            for (Option option : options.get(placement.job()).get(placement.operation()))
                model.addHint(
                        option.chosen,
                        option.station.code().equals(placement.station())
                                        && (!needsPlaces(option.station) || option.place == placement.place())
                                ? 1
                                : 0);
        }
    }

    static int lateness(long objective) {
        return Math.toIntExact(objective % SPOILT / LATE);
    }

    static int spoilt(long objective) {
        return Math.toIntExact(objective / SPOILT);
    }

    static int finish(long objective) {
        return Math.toIntExact(objective % LATE);
    }
}
