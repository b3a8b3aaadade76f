package dawnkettle.mail;

/** Who draws charts. */
public interface Charts {
    Mail.Picture draw(Chart chart);

    Mail.Picture draw(DayStrip strip);
}
