package dawnkettle.intake;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import dawnkettle.DemoDay;
import dawnkettle.conf.ReadConfiguration;
import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import dawnkettle.shop.Shop;
import dawnkettle.stock.Fact;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.Quantity;
import dawnkettle.stock.Recorded;
import dawnkettle.trouble.BadFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReadHistoryTest {
    private static final Shop SHOP = ReadConfiguration.from(DemoDay.CONF).shop();
    private static final LocalDate FRIDAY = LocalDate.of(2026, 11, 27);
    private static final LotCode LOT = new LotCode("261127-XF01");

    @TempDir
    Path folder;

    @BeforeEach
    void a_small_history() throws IOException {
        write("received.csv", "date,material,lot,units,paid", "2026-11-20,BEAN-YEL,Y1,3000,2850.00");
        write("soaked.csv", "date,tub,lot,kg", "2026-11-27,T01,Y1,30");
        write("made.csv", "date,lot,recipe,input_kg,product_kg", "2026-11-27,261127-XF01,extrafirm,30,73.4");
        write("packed.csv", "date,lot,product,packs", "2026-11-27,261127-XF01,XFIRM-350,200");
        write("late.csv", "date,product,packs", "2026-11-27,XFIRM-350,4");
        write("delivered.csv", "date,customer,line,product,lot,packs", "2026-11-27,C045,1,XFIRM-350,261127-XF01,180");
        write("sold.csv", "date,lot,product,packs", "2026-11-27,261127-XF01,XFIRM-350,5");
        write("counted.csv", "date,material,lot,units", "2026-11-27,BEAN-YEL,Y1,2970.5");
        write(
                "stock.csv",
                "counted,lot,product,packs,pack_date,best_before",
                "2026-11-27,261127-XF01,XFIRM-350,15,2026-11-27,2026-12-11");
    }

    @Test
    void each_file_becomes_its_facts() {
        assertThat(ReadHistory.from(folder, SHOP))
                .extracting(Recorded::fact)
                .containsExactly(
                        new Fact.Received(
                                "BEAN-YEL",
                                "Y1",
                                Quantity.of(Mass.kilograms(3_000)),
                                Money.minor(285_000, SHOP.house().currency())),
                        new Fact.Soaked(FRIDAY, "T01", "Y1", Mass.kilograms(30)),
                        new Fact.Yielded(LOT, "extrafirm", Mass.kilograms(30), Mass.grams(73_400)),
                        new Fact.Packed(LOT, "XFIRM-350", 200),
                        new Fact.CameLate("XFIRM-350", FRIDAY, 4),
                        new Fact.Delivered("H-2026-11-27-C045", 1, "C045", LOT, "XFIRM-350", 180),
                        new Fact.Sold(LOT, "XFIRM-350", 5),
                        new Fact.CountedMaterial("BEAN-YEL", "Y1", Quantity.of(Mass.grams(2_970_500))),
                        new Fact.CountedPacks(
                                LOT, "XFIRM-350", 15, Optional.of(new Fact.Dating(FRIDAY, FRIDAY.plusDays(14)))));
    }

    /** Quillhaven is five hours behind UTC in November; its evening hand fills the tubs on the evening before. */
    @Test
    void a_fact_has_its_hour_and_an_origin_that_outlives_other_rows() throws IOException {
        Recorded before = ReadHistory.from(folder, SHOP).get(1);
        assertThat(before.happenedAt()).isEqualTo(Instant.parse("2026-11-26T23:00:00Z"));
        assertThat(before.origin()).isEqualTo("history/soaked.csv 2026-11-27 T01 Y1");

        write("soaked.csv", "# a note", "date,tub,lot,kg", "2026-11-27,T02,Y1,45", "2026-11-27,T01,Y1,30");
        assertThat(ReadHistory.from(folder, SHOP)).contains(before);
    }

    @Test
    void every_problem_of_every_file_is_told_at_once() throws IOException {
        write(
                "received.csv",
                "date,material,lot,units,paid",
                "2026-11-31,BEAN-YEL,Y1,3000,2850.00",
                "2026-11-20,BEAN-RED,R1,10,10.00",
                "2026-11-20,TRAY-S,S1,10.5,88.001");
        write("soaked.csv", "date,tub,lot,kg", "2026-11-26,T01,Y1,30", "2026-11-27,T99,Y2,0");
        write(
                "made.csv",
                "date,lot,recipe,input_kg,product_kg",
                "2026-11-27,261127-XF01,extrafirm,30,73.4",
                "2026-11-27,261127-XF01,extrafirm,30,73.4",
                "2026-11-27,261125-FI01,firm,30,76.0",
                "2026-11-27,FI02,firm,-3,76.0");
        write(
                "packed.csv",
                "date,lot,product,packs",
                "2026-11-27,261127-XF01,XFIRM-350,0",
                "2026-11-27,261127-XF09,XFIRM-350,7",
                "2026-11-27,261127-XF01,FIRM-400,7",
                "2026-11-27,261127-XF01");
        write("late.csv", "date,product,amount");
        write("delivered.csv", "date,customer,line,product,lot,packs", "2026-11-27,C999,1,XFIRM-350,261127-SC01,180");
        Files.delete(folder.resolve("sold.csv"));
        write("counted.csv", "date,material,lot,units", "2026-11-27,NIGARI,Y1,5");
        write(
                "stock.csv",
                "counted,lot,product,packs,pack_date,best_before",
                "2026-11-27,261127-XF01,XFIRM-350,15,2026-11-27,2026-11-20");

        assertThat(catchThrowableOfType(BadFile.class, () -> ReadHistory.from(folder, SHOP)))
                .hasMessage(
                        String.join(
                                "\n",
                                "counted.csv:2:19: lot \"Y1\" is not known; write a lot of this material in received.csv",
                                "delivered.csv:2:12: customer \"C999\" is not known; write a customer of customers.csv",
                                "late.csv:1:1: the columns \"date,product,amount\" are others; write date,product,packs",
                                "made.csv:3:12: lot \"261127-XF01\" stands here for the second time; put the rows together into one",
                                "made.csv:4:12: lot \"261125-FI01\" is of another day or recipe; begin it with the row's day and its recipe's mark",
                                "made.csv:5:12: lot \"FI02\" is not a lot code; write it as 261125-FI03: day, recipe's mark, number",
                                "made.csv:5:22: input_kg \"-3\" is not a mass; write kilograms above 0, as 27.5",
                                "packed.csv:2:34: packs \"0\" is not a count; write a whole number from 1 to 1000000",
                                "packed.csv:3:12: lot \"261127-XF09\" is not in made.csv; write the lot as it stands there",
                                "packed.csv:4:24: product \"FIRM-400\" is not made by the lot's recipe; look at the lot and the product",
                                "packed.csv:5:1: the row has \"2\" cells; write 4, one for each column",
                                "received.csv:2:1: date \"2026-11-31\" is not a date; write it as 2026-11-25",
                                "received.csv:3:12: material \"BEAN-RED\" is not known; write a material of materials.csv",
                                "received.csv:4:22: units \"10.5\" is not a quantity; write pieces, 0 or more",
                                "received.csv:4:27: paid \"88.001\" is not an amount; write it in USD with at most 2 decimals, 0 or more",
                                "soaked.csv:2:1: date \"2026-11-26\" is no making day of the calendar; write a day on which the shop makes",
                                "soaked.csv:3:12: tub \"T99\" is not known; write a tub of stations.toml",
                                "soaked.csv:3:16: lot \"Y2\" is not known; write a lot of received.csv",
                                "soaked.csv:3:19: kg \"0\" is not a mass; write kilograms above 0, as 27.5",
                                "sold.csv: the file is not there; copy it from the demonstration shop",
                                "stock.csv:2:48: best_before \"2026-11-20\" is before the pack date; write what the label says"));
    }

    @Test
    void a_lot_is_handed_out_only_as_what_it_was_filled_into() throws IOException {
        write("sold.csv", "date,lot,product,packs", "2026-11-27,261127-XF01,XFIRM-KIT,1");
        assertThat(catchThrowableOfType(BadFile.class, () -> ReadHistory.from(folder, SHOP)))
                .hasMessage("sold.csv:2:12: lot \"261127-XF01\" was not filled into this product by packed.csv;"
                        + " write the lot as it stands there");
    }

    @Test
    void what_is_no_text_or_no_folder_is_refused_in_words() throws IOException {
        Files.write(folder.resolve("made.csv"), new byte[] {'d', (byte) 0xff, '\n'});
        write("late.csv", "");
        List<String> packed =
                List.of("packed.csv:2:12: lot \"261127-XF01\" is not in made.csv; write the lot as it stands there");
        assertThat(catchThrowableOfType(BadFile.class, () -> ReadHistory.from(folder, SHOP)))
                .hasMessage("late.csv: the file is empty; begin it with date,product,packs\n"
                        + "made.csv: the file is not UTF-8 text; save it as CSV with UTF-8 encoding\n" + packed.get(0));
        Path nowhere = folder.resolve("nowhere");
        assertThat(catchThrowableOfType(BadFile.class, () -> ReadHistory.from(nowhere, SHOP)))
                .hasMessage(nowhere + ": there is no such folder; name another");
    }

    private void write(String file, String... lines) throws IOException {
        Files.writeString(folder.resolve(file), String.join("\n", lines) + "\n", UTF_8);
    }
}
