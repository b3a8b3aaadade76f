package dawnkettle.command;

import static java.nio.charset.StandardCharsets.UTF_8;

import dawnkettle.conf.Configuration;
import dawnkettle.night.Office;
import dawnkettle.shop.Customer;
import dawnkettle.store.Effect;
import dawnkettle.store.KeptPlan;
import dawnkettle.store.Ledger;
import dawnkettle.store.StepRow;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.zone.ZoneRulesProvider;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Packs what whoever looks after Dawnkettle needs to see, without customers, people, addresses and accounts. */
@Command(
        name = "bundle",
        mixinStandardHelpOptions = true,
        description = {
            "Pack into one file what helps to find a mistake: status, journal, configuration, the last plan, the ledger's shape.",
            "Customers stand in it by code alone; names, addresses, accounts and passwords are taken out."
        })
final class Bundle implements Callable<Integer> {
    private static final DateTimeFormatter NAME = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HHmm", Locale.ROOT);

    /** Before and after today. */
    private static final int DAYS = 7;

    private static final int JOURNAL_SECONDS = 20;

    private final Wiring wiring;

    @Mixin
    private Folder folder;

    @Option(names = "--out", paramLabel = "DIR", defaultValue = ".", description = "Where it is put. Default: here")
    private Path out;

    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec;

    Bundle(Wiring wiring) {
        this.wiring = wiring;
    }

    @Override
    public Integer call() throws IOException {
        Configuration conf = wiring.configuration(folder.conf());
        try (Ledger ledger = folder.ledger(conf)) {
            Office office = wiring.service(conf, ledger, (at, line) -> {});
            Instant now = office.clock().instant();
            ZoneId zone = conf.shop().house().zone();
            Files.createDirectories(out);
            Path file = out.resolve("dawnkettle-bundle-" + NAME.format(now.atZone(zone)) + ".zip");
            write(file, texts(conf, office, now.atZone(zone).toLocalDate()));
            spec.commandLine()
                    .getOut()
                    .println(file + " is written; customers stand in it by code alone. Look into it, then send it.");
            return Dawnkettle.DONE;
        }
    }

    private static void write(Path file, Map<String, String> texts) throws IOException {
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file), UTF_8)) {
            for (Map.Entry<String, String> text : texts.entrySet()) {
                zip.putNextEntry(new ZipEntry(text.getKey()));
                zip.write(text.getValue().getBytes(UTF_8));
                zip.closeEntry();
            }
        }
    }

    private Map<String, String> texts(Configuration conf, Office office, LocalDate today) throws IOException {
        Redaction redaction = new Redaction(conf);
        Map<String, String> texts = new TreeMap<>();
        texts.put("about.txt", about(office));
        texts.put("status.txt", redaction.text(String.join("\n", new StatusPage(office).lines()) + "\n"));
        texts.put("ledger.txt", redaction.text(ledger(office.ledger())));
        texts.put("nights.txt", redaction.text(nights(office.ledger(), today)));
        texts.put("journal.txt", redaction.text(journal()));
        lastPlan(office, today).ifPresent(plan -> texts.put("plan.json", redaction.text(plan)));
        texts.putAll(written(folder.conf(), conf, redaction));
        return texts;
    }

    private static Optional<String> lastPlan(Office office, LocalDate today) {
        for (LocalDate day = today.plusDays(DAYS); day.isAfter(today.minusDays(DAYS)); day = day.minusDays(1)) {
            Optional<String> plan = office.ledger().plans().latest(day).map(KeptPlan::json);
            if (plan.isPresent()) return plan;
        }
        return Optional.empty();
    }

    private static String about(Office office) {
        return String.join(
                "\n",
                String.join(" ", new Dawnkettle.Version().getVersion()),
                "java " + System.getProperty("java.version") + ", " + System.getProperty("java.vm.name"),
                System.getProperty("os.name") + " " + System.getProperty("os.version") + " "
                        + System.getProperty("os.arch"),
                "time zone rules " + ZoneRulesProvider.getVersions("UTC").lastKey(),
                "ledger of version " + office.ledger().version(),
                "");
    }

    private static String ledger(Ledger ledger) {
        List<String> lines = new ArrayList<>();
        ledger.rowCounts().forEach((table, rows) -> lines.add(table + " " + rows));
        List<String> faults = ledger.faults();
        lines.add(faults.isEmpty() ? "sound" : String.join("\n", faults));
        lines.add("");
        lines.addAll(ledger.schema());
        return String.join("\n", lines) + "\n";
    }

    private static String nights(Ledger ledger, LocalDate today) {
        List<String> lines = new ArrayList<>();
        today.minusDays(DAYS).datesUntil(today.plusDays(3)).forEach(day -> {
            for (StepRow step : ledger.steps().of(day))
                lines.add(day + " step " + step.key().step() + " " + step.state() + " " + step.attempts() + " "
                        + step.changedAt() + " " + step.note());
            for (Effect effect : ledger.effects().of(day))
                lines.add(day + " effect " + effect.key() + " " + effect.state() + " " + effect.attempts() + " "
                        + effect.changedAt() + " " + effect.note());
            ledger.broken(day).forEach(law -> lines.add(day + " broken " + law));
        });
        return String.join("\n", lines) + "\n";
    }

    /** What the init system kept, where there is one and we may read it. */
    private static String journal() {
        try {
            Process asked = new ProcessBuilder(
                            "journalctl",
                            "-u",
                            "dawnkettle",
                            "-n",
                            "3000",
                            "--no-pager",
                            "--no-hostname",
                            "-o",
                            "short-iso")
                    .redirectErrorStream(true)
                    .start();
            String said = new String(asked.getInputStream().readAllBytes(), UTF_8);
            if (!asked.waitFor(JOURNAL_SECONDS, TimeUnit.SECONDS)) asked.destroyForcibly();
            return said;
        } catch (IOException e) {
            return "no journal on this machine\n";
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return "left\n";
        }
    }

    private static Map<String, String> written(Path folder, Configuration conf, Redaction redaction)
            throws IOException {
        Map<String, String> texts = new TreeMap<>();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
                String name = file.getFileName().toString();
                if (name.equals("customers.csv")) texts.put("conf/" + name, customers(conf));
                else if (name.endsWith(".toml")) texts.put("conf/" + name, redaction.toml(Files.readString(file)));
                else if (name.endsWith(".csv"))
                    texts.put("conf/" + name, redaction.text(withoutComments(Files.readString(file))));
            }
        }
        return texts;
    }

    private static String withoutComments(String csv) {
        return csv.lines().filter(line -> !line.startsWith("#")).collect(Collectors.joining("\n", "", "\n"));
    }

    private static String customers(Configuration conf) {
        return conf.shop().customers().stream()
                .map((Customer one) -> one.code() + "," + one.priceList() + "," + one.route() + "," + one.stop() + ","
                        + one.priority())
                .collect(Collectors.joining("\n", "code,price_list,route,stop,priority\n", "\n"));
    }
}
