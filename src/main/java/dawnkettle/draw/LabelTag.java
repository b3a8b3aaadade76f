package dawnkettle.draw;

import dawnkettle.label.Area;
import dawnkettle.label.DesignPart;
import dawnkettle.label.Symbology;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javax.xml.stream.XMLStreamReader;

/** One opening tag of a design and what its attributes mean. */
final class LabelTag {
    private static final int MICROMETRES = 3;
    private static final int NOT_THERE = 0;

    private final Map<String, String> attributes = new LinkedHashMap<>();
    private final Place place;
    private final List<Problem> problems;

    LabelTag(String file, XMLStreamReader xml, List<Problem> problems) {
        this.place = place(file, xml);
        this.problems = problems;
        for (int i = 0; i < xml.getAttributeCount(); i++) {
            String space = xml.getAttributeNamespace(i);
            if (space == null || space.isEmpty())
                attributes.put(xml.getAttributeLocalName(i), xml.getAttributeValue(i));
        }
    }

    /** Where and how text stands. */
    record Lettering(Area area, DesignPart.Type type) {}

    static Place place(String file, XMLStreamReader xml) {
        var at = xml.getLocation();
        return new Place(file, Math.max(0, at.getLineNumber()), Math.max(0, at.getColumnNumber()));
    }

    int line() {
        return place.line();
    }

    String value(String name, String otherwise) {
        return attributes.getOrDefault(name, otherwise);
    }

    void allows(String... names) {
        Set<String> known = Set.of(names);
        for (String name : attributes.keySet())
            if (!known.contains(name))
                wrong(
                        "attribute",
                        "\"" + name + "\" is not used here",
                        "leave it out; known are " + String.join(", ", names));
    }

    void wrong(String subject, String what, String remedy) {
        problems.add(new Problem(place, subject + " " + what, remedy));
    }

    /** A length that names its unit, as "100mm", in micrometres. */
    int millimetresWithUnit(String name) {
        String text = value(name, "");
        if (text.endsWith("mm")) {
            Optional<Integer> length = length(text.substring(0, text.length() - 2));
            if (length.isPresent()) return length.get();
        }
        wrong(name, "\"" + text + "\" is not a length", "write it as 100mm");
        return NOT_THERE;
    }

    static String plain(int micrometres) {
        BigDecimal length = BigDecimal.valueOf(micrometres, MICROMETRES).stripTrailingZeros();
        return (length.scale() < 0 ? length.setScale(0) : length).toPlainString();
    }

    Optional<Area> area() {
        Optional<Integer> x = number("x");
        Optional<Integer> y = number("y");
        Optional<Integer> width = number("width");
        Optional<Integer> height = number("height");
        if (x.isEmpty() || y.isEmpty() || width.isEmpty() || height.isEmpty()) return Optional.empty();
        if (width.get() > 0 && height.get() > 0)
            return Optional.of(new Area(x.get(), y.get(), width.get(), height.get()));
        wrong("rect", "has no width or no height", "give it both, in millimetres");
        return Optional.empty();
    }

    Optional<DesignPart.Module> module(Symbology symbology) {
        Symbology.Limits limits = symbology.limits();
        String text = value("data-module", plain(limits.leastModule()) + "-" + plain(limits.mostModule()));
        String[] ends = text.split("-");
        Optional<Integer> least = length(ends[0]);
        Optional<Integer> most = length(ends[ends.length - 1]);
        boolean isRange = least.isPresent() && most.isPresent() && least.get() <= most.get();
        if (isRange && least.get() >= limits.leastModule() && most.get() <= limits.mostModule())
            return Optional.of(new DesignPart.Module(least.get(), most.get()));
        wrong(
                "data-module",
                "\"" + text + "\" is not a range that scans",
                "write one within " + plain(limits.leastModule()) + "-" + plain(limits.mostModule()));
        return Optional.empty();
    }

    Optional<Lettering> lettering() {
        allows(
                "id",
                "x",
                "y",
                "font-size",
                "font-weight",
                "font-family",
                "text-anchor",
                "fill",
                "data-width",
                "data-height",
                "data-least");
        Optional<Integer> x = number("x");
        Optional<Integer> y = number("y");
        Optional<Integer> size = number("font-size");
        Optional<Integer> width = number("data-width");
        if (x.isEmpty() || y.isEmpty() || size.isEmpty() || width.isEmpty()) return Optional.empty();
        int least = attributes.containsKey("data-least") ? number("data-least").orElse(size.get()) : size.get();
        if (size.get() <= 0 || width.get() <= 0 || least <= 0 || least > size.get()) {
            wrong(
                    "text",
                    "\"" + least + "\" to \"" + size.get() + "\" is not a range of sizes",
                    "give a font-size, a data-width and a data-least not above the size");
            return Optional.empty();
        }
        return Optional.of(lettering(new Area(x.get(), y.get(), width.get(), size.get()), least));
    }

    /** @param drawn left or middle or right end of the baseline, width, and em as its height */
    private Lettering lettering(Area drawn, int least) {
        DesignPart.Side side = side();
        int left = switch (side) {
            case LEFT -> drawn.x();
            case MIDDLE -> drawn.x() - drawn.width() / 2;
            case RIGHT -> drawn.x() - drawn.width();
        };
        int above = (int) Math.ceil(drawn.height() * LabelGauge.ABOVE);
        int oneLine = (int) Math.ceil(drawn.height() * (LabelGauge.ABOVE + LabelGauge.BELOW));
        int height =
                attributes.containsKey("data-height") ? number("data-height").orElse(oneLine) : oneLine;
        int lines = height <= oneLine ? 1 : Math.max(1, (int) (height / (least * LabelGauge.LEADING)) + 1);
        return new Lettering(
                new Area(left, drawn.y() - above, drawn.width(), Math.max(height, oneLine)),
                new DesignPart.Type(drawn.height(), least, lines, look(side)));
    }

    private DesignPart.Side side() {
        String anchor = value("text-anchor", "start");
        switch (anchor) {
            case "start":
                return DesignPart.Side.LEFT;
            case "middle":
                return DesignPart.Side.MIDDLE;
            case "end":
                return DesignPart.Side.RIGHT;
            default:
                wrong("text-anchor", "\"" + anchor + "\" is not a side", "write start, middle or end");
                return DesignPart.Side.LEFT;
        }
    }

    private DesignPart.Look look(DesignPart.Side side) {
        String weight = value("font-weight", "normal");
        if (!Set.of("normal", "bold", "400", "700").contains(weight))
            wrong("font-weight", "\"" + weight + "\" is not there", "write normal or bold");
        String fill = value("fill", "black");
        if (!Set.of("black", "white").contains(fill))
            wrong("fill", "\"" + fill + "\" cannot be printed", "write black or white");
        return new DesignPart.Look(weight.equals("bold") || weight.equals("700"), fill.equals("white"), side);
    }

    private Optional<Integer> number(String name) {
        String text = value(name, "");
        Optional<Integer> length = length(text);
        if (length.isEmpty()) wrong(name, "\"" + text + "\" is not a number", "write millimetres, as 12.5");
        return length;
    }

    private static Optional<Integer> length(String text) {
        if (!text.matches("[0-9]{1,4}(\\.[0-9]{1,6})?")) return Optional.empty();
        return Optional.of(new BigDecimal(text)
                .movePointRight(MICROMETRES)
                .setScale(0, RoundingMode.HALF_UP)
                .intValueExact());
    }
}
