package dawnkettle.command;

import dawnkettle.conf.Configuration;
import dawnkettle.night.Office;
import dawnkettle.night.PlanTomorrow;
import dawnkettle.plan.DayPlan;
import dawnkettle.store.Ledger;
import java.time.Clock;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Shows the plan of the next production day, and keeps nothing. */
@Command(
        name = "plan",
        mixinStandardHelpOptions = true,
        description = "Show the plan of the day whose book closes next: the one in force, or how it would be now.")
final class Plan implements Callable<Integer> {
    private final Wiring wiring;

    @Mixin
    private Folder folder;

    @Option(names = "--json", description = "Write the whole plan in its open form.")
    private boolean json;

    @Option(names = "--at", paramLabel = "TIME", description = "Plan as at this local time, as 2026-12-03T15:00.")
    private LocalDateTime at;

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    Plan(Wiring wiring) {
        this.wiring = wiring;
    }

    @Override
    public Integer call() {
        Configuration conf = wiring.configuration(folder.conf());
        try (Ledger ledger = folder.ledger(conf)) {
            Office office = at(conf, wiring.service(conf, ledger, (when, line) -> {}));
            LocalDate day = office.timetable().closingFrom(office.clock().instant());
            DayPlan plan = office.planOnTheWall(day).orElseGet(() -> new PlanTomorrow(office).preview(day));
            spec.commandLine()
                    .getOut()
                    .print(json ? new PlanTomorrow(office).written(plan) : new NightPage(plan, conf.shop()).text());
            spec.commandLine().getOut().flush();
            return plan.shortages().isEmpty() && plan.lateRoutes() == 0 ? Dawnkettle.DONE : Dawnkettle.LOOK;
        }
    }

    private Office at(Configuration conf, Office office) {
        if (at == null) return office;
        Clock fixed = Clock.fixed(
                at.atZone(conf.shop().house().zone()).toInstant(),
                conf.shop().house().zone());
        return new Office(office.papers(), office.ledger(), fixed, office.edges(), office.story());
    }
}
