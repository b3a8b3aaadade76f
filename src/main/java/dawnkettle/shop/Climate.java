package dawnkettle.shop;

import dawnkettle.measure.Celsius;
import java.time.Month;
import java.util.List;

/** Monthly norms of the soak room and of the tap, January first: what holds where nothing measures. */
public record Climate(List<Celsius> room, List<Celsius> tap) {
    public Climate {
        room = List.copyOf(room);
        tap = List.copyOf(tap);
        if (room.size() != 12 || tap.size() != 12) throw new IllegalArgumentException("norms are twelve");
    }

    public Celsius room(Month month) {
        return room.get(month.getValue() - 1);
    }

    public Celsius tap(Month month) {
        return tap.get(month.getValue() - 1);
    }
}
