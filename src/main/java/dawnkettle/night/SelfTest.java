package dawnkettle.night;

import dawnkettle.mail.Alarm;
import dawnkettle.mail.AlertMail;
import dawnkettle.mail.Mail;
import dawnkettle.trouble.DiskAway;
import dawnkettle.trouble.Trouble;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * The evening self-test: everything that the night will need is asked while somebody is awake to put it right. One mail
 * says what is wrong; where all is well nobody is written to.
 */
public final class SelfTest implements Work {
    private final Office office;

    public SelfTest(Office office) {
        this.office = office;
    }

    /**
     * What one look found.
     *
     * @param what what was looked at
     * @param isWell whether it is as the night needs it
     * @param waits whether it may wait for the week's mail: nothing of this night hangs on it
     * @param said what it answered, or what is wrong
     */
    public record Finding(String what, boolean isWell, boolean waits, String said, String safe, String todo) {
        static Finding well(String what, String said) {
            return new Finding(what, true, false, said, "", "");
        }

        static Finding wrong(String what, String said, String safe, String todo) {
            return new Finding(what, false, false, said, safe, todo);
        }

        Finding waiting() {
            return new Finding(what, isWell, true, said, safe, todo);
        }
    }

    @Override
    public String run(LocalDate productionDate) {
        List<Finding> wrong =
                look(productionDate).stream().filter(one -> !one.isWell()).toList();
        if (wrong.isEmpty()) return "all is well for the night";
        boolean isWeekly =
                today().getDayOfWeek() == office.papers().settings().times().costDay();
        if (isWeekly || wrong.stream().anyMatch(one -> !one.waits())) tell(productionDate, wrong);
        return wrong.size() + (wrong.size() == 1 ? " thing" : " things") + " to look at: "
                + String.join("; ", wrong.stream().map(Finding::said).toList());
    }

    /** Asks everything there is to ask, one after the other; what goes wrong with one question stops no other. */
    public List<Finding> look(LocalDate productionDate) {
        List<Finding> found = new ArrayList<>();
        for (Probe probe : office.edges().senses().probes()) found.add(ask(probe));
        found.addAll(new SelfTestOfLedger(office).look(productionDate));
        return found;
    }

    private static Finding ask(Probe probe) {
        try {
            return Finding.well(probe.what(), probe.question().get());
        } catch (DiskAway gone) {
            throw gone;
        } catch (Trouble trouble) {
            return Finding.wrong(probe.what(), trouble.getMessage(), probe.safe(), probe.todo());
        } catch (RuntimeException mistake) {
            return Finding.wrong(
                    probe.what(), probe.what() + " could not be asked: " + mistake, probe.safe(), probe.todo());
        }
    }

    private void tell(LocalDate productionDate, List<Finding> wrong) {
        NightSettings.Mailing mailing = office.papers().settings().letters();
        List<String> to = mailing.alertTo().isEmpty() ? mailing.summaryTo() : mailing.alertTo();
        if (to.isEmpty()) return;
        Instant now = office.now();
        Instant by = office.timetable()
                .at(productionDate, office.papers().settings().times().dawnCheck());
        List<Alarm> alarms = wrong.stream()
                .map(one -> new Alarm(
                        "self test " + one.what(),
                        one.said(),
                        one.safe(),
                        one.todo(),
                        one.waits() ? java.util.Optional.empty() : java.util.Optional.of(by),
                        true))
                .toList();
        String id = Mail.idOf(productionDate, "self-test", 1);
        Mail mail = new AlertMail(office.shop().house(), id, now).of(alarms, List.of(), false);
        Letters letters = new Letters(office);
        letters.queue(mail.addressedTo(to));
        letters.deliver();
    }

    private LocalDate today() {
        return office.now().atZone(office.shop().house().zone()).toLocalDate();
    }
}
