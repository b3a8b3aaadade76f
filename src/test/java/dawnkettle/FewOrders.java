package dawnkettle;

import dawnkettle.conf.Configuration;
import dawnkettle.conf.ReadConfiguration;
import dawnkettle.cost.Chart;
import dawnkettle.draw.LabelDesigns;
import dawnkettle.export.PlanJson;
import dawnkettle.label.CaseLabels;
import dawnkettle.label.Design;
import dawnkettle.label.Dots;
import dawnkettle.label.LabelDrawing;
import dawnkettle.label.LabelText;
import dawnkettle.label.LotLabels;
import dawnkettle.mail.Bytes;
import dawnkettle.mail.Charts;
import dawnkettle.mail.Mail;
import dawnkettle.night.NightSettings;
import dawnkettle.night.Office;
import dawnkettle.night.PlanForm;
import dawnkettle.plan.DayPlan;
import dawnkettle.sheet.SheetSettings;
import dawnkettle.sheet.SheetStyle;
import dawnkettle.shop.Customer;
import dawnkettle.shop.Shop;
import dawnkettle.trouble.Problem;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The demonstration shop with a handful of customers: its nights take milliseconds, and are whole nights all the same. */
final class FewOrders {
    static final Configuration CONF = ReadConfiguration.from(Path.of("conf"));
    static final Shop SHOP = CONF.shop();

    /** Vans that go each work day: this one takes what was made the same day, the other what was made the day before. */
    static final List<String> SAME_DAY = customers("RIVER");

    static final List<String> DAY_AFTER = customers("HARBOR");

    static final List<String> PRODUCTS = List.of("FIRM-400", "MED-400", "FIRM-BKT");

    /** Read from the file and not from the shop, to be independent of what the shop makes of it. */
    static final Map<String, Integer> SHELF_LIFE_DAYS = shelfLives();

    static final SheetStyle STYLE = SheetStyle.of(
            SHOP.house(),
            new SheetSettings(List.of(SHOP.house().language()), Map.of(), false),
            (text, lettering) -> text.length() * 1.9);

    static final PlanForm FORM = new PlanForm() {
        @Override
        public String write(DayPlan plan) {
            return PlanJson.write(plan, SHOP);
        }

        @Override
        public DayPlan read(String text) {
            return READ.computeIfAbsent(text, one -> PlanJson.read(one, SHOP));
        }
    };

    /** The plans of the last nights: each is read many times in a night, and always the same. */
    private static final Map<String, DayPlan> READ = Collections.synchronizedMap(new LinkedHashMap<>() {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, DayPlan> eldest) {
            return size() > 6;
        }
    });

    /** Empty pictures: what they would show is in the words. */
    static final Charts CHARTS = new Charts() {
        @Override
        public Mail.Picture draw(Chart chart) {
            return new Mail.Picture("chart", Bytes.of(new byte[] {1}), "a chart");
        }

        @Override
        public Mail.Picture draw(dawnkettle.mail.DayStrip strip) {
            return new Mail.Picture("day", Bytes.of(new byte[] {1}), "a day");
        }

        @Override
        public Mail.Picture draw(dawnkettle.cost.Bars bars) {
            return new Mail.Picture("bars", Bytes.of(new byte[] {1}), "bars");
        }
    };

    private FewOrders() {}

    private static List<String> customers(String route) {
        return SHOP.customers().stream()
                .filter(customer -> customer.route().equals(route))
                .map(Customer::code)
                .limit(4)
                .toList();
    }

    private static Map<String, Integer> shelfLives() {
        try {
            List<String> rows = Files.readAllLines(Path.of("conf/products.csv")).stream()
                    .filter(row -> !row.startsWith("#"))
                    .toList();
            int column = List.of(rows.get(0).split(",")).indexOf("shelf_life_days");
            Map<String, Integer> days = new HashMap<>();
            for (String row : rows.subList(1, rows.size())) {
                String[] cells = row.split(",(?=(?:[^\"]*\"[^\"]*\")*[^\"]*$)");
                days.put(cells[0], Integer.parseInt(cells[column]));
            }
            return days;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A time of the day before, by the shop's clock; from 24 on, of the day. */
    static Instant at(LocalDate day, int hour, int minute) {
        return day.minusDays(1)
                .atStartOfDay(SHOP.house().zone())
                .plusHours(hour)
                .plusMinutes(minute)
                .toInstant();
    }

    /** The shop's papers with a few standing orders, a short search, and all that changes in {@code folder}. */
    static Office.Papers papers(Path folder) {
        NightSettings was = CONF.night().inFolder(folder);
        NightSettings settings = new NightSettings(
                was.times(),
                was.places(),
                new NightSettings.Search(4, 600_000, 1),
                new NightSettings.Mailing(
                        List.of("owner@millrace.example"),
                        List.of("owner@millrace.example"),
                        List.of("farm@quillhaven.example"),
                        true,
                        Set.of()),
                was.records(),
                was.buying(),
                NightSettings.Care.NONE);
        return new Office.Papers(
                SHOP,
                CONF.standing().stream()
                        .filter(standing -> PRODUCTS.contains(standing.product()))
                        .filter(standing -> standing.customer().equals(SAME_DAY.get(0))
                                || standing.customer().equals(DAY_AFTER.get(0)))
                        .toList(),
                settings);
    }

    /** Pictures of one dot that remember which words they show. */
    static class WordsOnly implements LabelDrawing {
        private final Map<Dots, LabelText> words = Collections.synchronizedMap(new IdentityHashMap<>());

        @Override
        public Dots draw(Design design, LabelText text) {
            Dots dot = Dots.typed("#");
            words.put(dot, text);
            return dot;
        }

        @Override
        public List<Problem> check(Design design, LabelText text) {
            return List.of();
        }

        LabelText on(Dots picture) {
            return words.get(picture);
        }
    }

    static LotLabels lots(LabelDrawing drawing) {
        return new LotLabels(Read.DESIGNS, new CaseLabels(SHOP.house()), drawing);
    }

    /** Read once. */
    private static final class Read {
        static final dawnkettle.label.Designs DESIGNS =
                LabelDesigns.read(CONF.labels().folder());
    }
}
