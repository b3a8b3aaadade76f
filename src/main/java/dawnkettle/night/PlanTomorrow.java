package dawnkettle.night;

import dawnkettle.book.ClosedBook;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Evening;
import dawnkettle.shop.Shop;
import dawnkettle.trouble.DiskAway;
import java.time.LocalDate;
import java.util.List;

/** Computes the plan of a closed book and keeps it, once the conservation laws hold. */
public final class PlanTomorrow implements Work {
    private static final String WITHOUT_SEARCH =
            "The search did not come out; this plan was made without it. Everything in it holds; the day may be longer than it"
                    + " need be.";

    private final Office office;
    private final Evenings evenings;
    private final CountedYields yields;
    private final CountedSoaks soaks;
    private final BoxedPlanner planner;
    private final StandIn standIn;

    public PlanTomorrow(Office office) {
        this(office, new BoxedPlanner(office), new StandIn(office, new SheetEffects(office)));
    }

    /** @param standIn what is printed where no plan comes out */
    PlanTomorrow(Office office, BoxedPlanner planner, StandIn standIn) {
        this.office = office;
        this.planner = planner;
        this.standIn = standIn;
        this.evenings = new Evenings(office);
        this.yields = new CountedYields(office);
        this.soaks = new CountedSoaks(office);
    }

    @Override
    public String run(LocalDate productionDate) {
        if (office.ledger().plans().latest(productionDate).isPresent()) return "the plan stands";
        try {
            return planned(productionDate);
        } catch (DiskAway gone) {
            throw gone;
        } catch (RuntimeException mistake) {
            throw new NoPlan(standIn.print(productionDate, mistake), mistake);
        }
    }

    private String planned(LocalDate productionDate) {
        ClosedBook book = office.ledger()
                .closes()
                .find(productionDate)
                .orElseThrow(() -> new IllegalStateException("the book of " + productionDate + " is not closed"));
        DayPlan plan = compute(productionDate, book);
        keep(plan);
        return sentence(plan);
    }

    /** While the clock is in doubt: the plan of the book as it stands, kept apart until the clock is right. */
    String planUnconfirmed(LocalDate productionDate) {
        if (office.planOnTheWall(productionDate).isPresent()) return "the plan stands";
        try {
            DayPlan plan = preview(productionDate);
            office.ledger().unconfirmed().keepPlan(productionDate, office.now(), written(plan));
            return sentence(plan) + ", date not confirmed";
        } catch (DiskAway gone) {
            throw gone;
        } catch (RuntimeException mistake) {
            throw new NoPlan(standIn.print(productionDate, mistake), mistake);
        }
    }

    /** How the plan would be if the book were closed now; nothing is kept. */
    public DayPlan preview(LocalDate productionDate) {
        ClosedBook book = office.ledger()
                .closes()
                .find(productionDate)
                .orElseGet(() -> office.book().close(productionDate, office.now()));
        return compute(productionDate, book);
    }

    /** With the search; where that fails by a mistake of ours or takes too long, without it. */
    DayPlan compute(LocalDate productionDate, ClosedBook book) {
        long decodes = office.papers().settings().search().decodes();
        try {
            return plan(productionDate, book, decodes);
        } catch (DiskAway gone) {
            throw gone;
        } catch (RuntimeException mistake) {
            office.tell("the plan with search did not come out (" + mistake.getMessage() + "); planning without it");
            return plan(productionDate, book, 0).withWarnings(List.of(WITHOUT_SEARCH));
        }
    }

    private DayPlan plan(LocalDate productionDate, ClosedBook book, long decodes) {
        Shop shop = yields.shop(productionDate);
        Evening evening = evenings.of(productionDate, book, decodes);
        DayPlan plan = planner.plan(shop, evening);
        return soaks.told(yields.told(plan.withAdvice(waysOut(shop, evening, plan))));
    }

    /** What would help is only advice: a plan stands without it. */
    private List<String> waysOut(Shop shop, Evening evening, DayPlan plan) {
        try {
            return planner.waysOut(shop, evening, plan);
        } catch (RuntimeException mistake) {
            office.tell("no ways out were computed: " + mistake.getMessage());
            return List.of();
        }
    }

    /** A plan in the form that is kept and published. */
    public String written(DayPlan plan) {
        return office.edges().plans().write(plan, yields.shop(plan.heading().productionDate()));
    }

    /** Keeps a plan in the ledger, or nothing of it where it breaks a conservation law. */
    void keep(DayPlan plan) {
        office.ledger().inTransaction(() -> {
            office.ledger().plans().keep(plan, written(plan));
            List<String> broken = office.ledger().broken(plan.heading().productionDate());
            if (!broken.isEmpty())
                throw new IllegalStateException("the plan breaks a conservation law: " + String.join("; ", broken));
        });
    }

    static String sentence(DayPlan plan) {
        long missing = plan.shortages().stream().mapToLong(one -> one.packs()).sum();
        return plan.batches().size() + " batches, "
                + (plan.lateRoutes() == 0 ? "every van in time" : plan.lateRoutes() + " vans late")
                + (missing == 0 ? ", nothing short" : ", " + missing + " packs short");
    }
}
