package dawnkettle.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.DemoDay;
import dawnkettle.conf.ReadConfiguration;
import dawnkettle.shop.Shop;
import dawnkettle.stock.KnownLots.Past;
import dawnkettle.trouble.BadFile;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Friday 4 December 2026, 06:30 in the demonstration shop (11:30 UTC); the fryer is down from 06:00. */
class RoomWordsTest {
    private static final Shop SHOP = ReadConfiguration.from(DemoDay.CONF).shop();
    private static final LocalDate FRIDAY = LocalDate.of(2026, 12, 4);
    private static final LocalDate SATURDAY = FRIDAY.plusDays(1);
    private static final LocalDate MONDAY = FRIDAY.plusDays(3);
    private static final Instant NOW = Instant.parse("2026-12-04T11:30:00Z");
    private static final Fact.Down FRYER = new Fact.Down(FRIDAY, "FRYER", at("11:00"), at("20:00"), "no gas");

    private static Instant at(String utc) {
        return Instant.parse("2026-12-04T" + utc + ":00Z");
    }

    private static Fact record(String line) {
        Past past = new Past(List.of(), Holds.NONE, Map.of(), List.of(FRYER), Optional.empty());
        Desk desk = new Desk(SHOP, NOW, new KnownLots(List.of(), List.of(), past));
        return ReadFact.read(List.of(line.split(" ")), Optional.empty(), desk).fact();
    }

    @Test
    void who_is_away_is_written_down_for_the_next_time_that_the_stretch_comes() {
        assertThat(record("away 1 07:00 9:00 ill"))
                .isEqualTo(new Fact.Away(FRIDAY, 2, at("12:00"), at("14:00"), "ill"));
        assertThat(record("away 1.5 02:30 06:00"))
                .as("today it is over")
                .isEqualTo(new Fact.Away(
                        SATURDAY, 3, Instant.parse("2026-12-05T07:30:00Z"), Instant.parse("2026-12-05T11:00:00Z"), ""));
        assertThat(record("away 2 13:00 end 2026-12-07 at a course"))
                .isEqualTo(new Fact.Away(
                        MONDAY,
                        4,
                        Instant.parse("2026-12-07T18:00:00Z"),
                        Instant.parse("2026-12-07T20:00:00Z"),
                        "at a course"));
        assertThat(record("away 0.5 now 10:00")).isEqualTo(new Fact.Away(FRIDAY, 1, NOW, at("15:00"), ""));
    }

    @Test
    void what_is_down_is_so_until_the_end_unless_somebody_says_when() {
        assertThat(record("down mill-1 07:00 08:30 2026-12-04 belt"))
                .isEqualTo(new Fact.Down(FRIDAY, "MILL-1", at("12:00"), at("13:30"), "belt"));
        assertThat(record("down MILL-1 now the belt is torn"))
                .isEqualTo(new Fact.Down(FRIDAY, "MILL-1", NOW, at("20:00"), "the belt is torn"));
    }

    @Test
    void what_is_up_again_ends_what_was_down() {
        Fact up = record("up fryer");
        assertThat(up).isEqualTo(new Fact.Up(FRIDAY, "FRYER", NOW));
        List<Recorded> said = new ArrayList<>();
        for (Fact fact : List.of(FRYER, up)) said.add(new Recorded(fact, NOW, NOW, "test " + said.size()));
        assertThat(Missing.of(said).down()).containsExactly(new Fact.Down(FRIDAY, "FRYER", at("11:00"), NOW, "no gas"));
    }

    @Test
    void a_later_word_on_the_same_breakdown_counts_and_people_add_up() {
        Fact.Away one = new Fact.Away(FRIDAY, 2, at("12:00"), at("14:00"), "");
        List<Recorded> said = new ArrayList<>();
        for (Fact fact : List.of(FRYER, one, new Fact.Down(FRIDAY, "FRYER", at("11:00"), at("12:00"), "mended"), one))
            said.add(new Recorded(fact, NOW, NOW, "test " + said.size()));
        Missing missing = Missing.of(said);
        assertThat(missing.away()).containsExactly(one, one);
        assertThat(missing.down()).extracting(Fact.Down::until).containsExactly(at("12:00"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '~', textBlock = """
            away nine 07:00 09:00              | record word:2: hands "nine" are not people, whole or half; write how many are away, as 1 or 0.5
            away 0 07:00 09:00                 | record word:2: hands "0" are not people, whole or half; write how many are away, as 1 or 0.5
            away -1 07:00 09:00                | record word:2: hands "-1" are not people, whole or half; write how many are away, as 1 or 0.5
            away 0.7 07:00 09:00               | record word:2: hands "0.7" are not people, whole or half; write how many are away, as 1 or 0.5
            away 9 07:00 09:00                 | record word:2: hands "9" are more than the 7 that are there from 07:00 to 09:00; write how many of them are away
            away 7.5 06:30 09:00               | record word:2: hands "7.5" are more than the 7 that are there from 06:30 to 09:00; write how many of them are away
            away 1 7 09:00                     | record word:3: time "7" is not a time of the day; write hours and minutes, as 05:30
            away 1 25:00 26:00                 | record word:3: time "25:00" is not a time of the day; write hours and minutes, as 05:30
            away 1 end end                     | record word:3: time "end" is not a time of the day; write hours and minutes, as 05:30
            away 1 09:00 07:00                 | record word:3: from 09:00 to 07:00 runs backward; write when it begins, then when it ends
            away 1 20:00 21:00                 | record word:3: nobody is at work from 20:00 to 21:00; the crew is there 02:30-06:30
            away 1 07:00 09:00 2026-12-06      | record word:5: nothing is made on "2026-12-06"; write a making day, as 2026-12-05
            away 1 07:00 09:00 2026-12-03      | record word:5: "2026-12-03" until 09:00 is over; record it before it is over: no plan can change it any more
            away 1 07:00 09:00 2026-13-03      | record word:5: date "2026-13-03" is not a day; write year-month-day, as 2026-12-04
            away 1 07:00                       | a word is missing; write as in: record away HANDS FROM UNTIL [DAY] [WHY]
            down FRYR 07:00                    | record word:2: there is no station "FRYR"; did you mean "FRYER"?
            down STILL 07:00                   | record word:2: there is no station "STILL"; write one of MILL-1
            down FRYER half-past               | record word:3: time "half-past" is not a time of the day; write hours and minutes, as 05:30
            down FRYER 07:00 7.5               | record word:4: time "7.5" is not a time of the day; write hours and minutes, as 05:30
            down FRYER 20:00 21:00             | record word:3: FRYER is not in use from 20:00 to 21:00; it is open
            down FRYER                         | a word is missing; write as in: record down STATION FROM [UNTIL] [DAY] [WHY]
            up MILL-1                          | record word:2: "MILL-1" is not down at 06:30; there is nothing to take back
            up FRYER 05:00                     | record word:2: "FRYER" is not down at 05:00; there is nothing to take back
            up FRYER end                       | record word:3: time "end" is not a time of the day; write hours and minutes, as 05:30
            up FRYER 07:00 soon                | record word:4: "soon" is a word too many; write as in: record up STATION [TIME]
            """)
    void what_cannot_be_is_refused_with_the_remedy(String line, String message) {
        assertThatThrownBy(() -> record(line)).isInstanceOf(BadFile.class).hasMessageContaining(message);
    }

    @Test
    void a_stretch_after_the_clocks_went_back_is_told_in_winter_time() {
        Desk desk =
                new Desk(SHOP, Instant.parse("2026-10-31T20:00:00Z"), new KnownLots(List.of(), List.of(), Past.NONE));
        Fact.Away away = (Fact.Away) ReadFact.read(List.of("away", "1", "07:00", "09:00"), Optional.empty(), desk)
                .fact();
        assertThat(away.productionDate()).isEqualTo(LocalDate.of(2026, 11, 2));
        assertThat(away.from()).as("five hours behind UTC").isEqualTo(Instant.parse("2026-11-02T12:00:00Z"));
    }

    @Test
    void it_is_told_in_a_sentence() {
        RecordTold told = new RecordTold(SHOP);
        assertThat(told.of(new Recorded(record("away 1 07:00 09:00 ill"), NOW, NOW, "test")))
                .isEqualTo("Written down for 2026-12-04 06:30: 1 hand is away from 07:00 to 09:00 on 2026-12-04 (ill);"
                        + " the day is planned again without.");
        assertThat(told.of(new Recorded(FRYER, NOW, NOW, "test")))
                .isEqualTo("Written down for 2026-12-04 06:30: station FRYER is down from 06:00 to 15:00 on 2026-12-04"
                        + " (no gas); the day is planned again without it, and when it works again write: record up"
                        + " FRYER.");
        assertThat(told.of(new Recorded(new Fact.Up(FRIDAY, "FRYER", NOW), NOW, NOW, "test")))
                .isEqualTo("Written down for 2026-12-04 06:30: station FRYER works again from 06:30 on 2026-12-04.");
    }
}
