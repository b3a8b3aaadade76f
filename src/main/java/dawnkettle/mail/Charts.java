package dawnkettle.mail;

import dawnkettle.cost.Bars;
import dawnkettle.cost.Chart;

/** Who draws charts. */
public interface Charts {
    Mail.Picture draw(Chart chart);

    Mail.Picture draw(DayStrip strip);

    Mail.Picture draw(Bars bars);
}
