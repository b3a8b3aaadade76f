package dawnkettle.night;

import dawnkettle.book.Amendment;
import dawnkettle.book.OrderBook;
import dawnkettle.book.OrderLine;
import dawnkettle.book.OrderReading;
import dawnkettle.book.OrderWish;
import dawnkettle.book.ReadMail;
import dawnkettle.book.ReadMail.Question;
import dawnkettle.book.ReadOrderMail;
import dawnkettle.mail.Answer;
import dawnkettle.mail.Arrived;
import dawnkettle.mail.Mail;
import dawnkettle.night.ObeyLines.Outcome;
import dawnkettle.shop.Customer;
import dawnkettle.shop.Product;
import dawnkettle.trouble.Problem;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Takes a customer's mail: the clear lines go into the book, the others are asked, and the reply repeats all of them. */
final class ServeOrder {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEEE d MMMM", Locale.ENGLISH);
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("EEEE d MMMM, HH:mm", Locale.ENGLISH);

    private final Office office;
    private final Customer customer;
    private final String origin;
    private final List<String> booked = new ArrayList<>();
    private final List<String> open = new ArrayList<>();

    ServeOrder(Office office, Customer customer, String origin) {
        this.office = office;
        this.customer = customer;
        this.origin = origin;
    }

    Outcome serve(Arrived.Content content) {
        ReadMail read = read(content);
        BookWishes wishes = new BookWishes(office, customer, origin);
        for (OrderWish wish : read.understood())
            if (office.edges().mail().in().settings().limits().booksWords()) wishes.take(wish);
            else open.add("“" + wish.words() + "”: " + said(wish) + "; somebody of the shop will book it.");
        for (Question question : read.questions()) ask(question);
        for (Question question : wishes.questions()) ask(question);
        for (Mail.Attachment table : content.tables()) take(table);
        if (wishes.booked().isEmpty() && booked.isEmpty() && open.isEmpty())
            open.add("No order was seen in it. Somebody of the shop will read it.");
        List<Answer.Part> parts = new ArrayList<>(days(wishes));
        parts.add(new Answer.Part("Of your table", booked));
        parts.add(new Answer.Part("Not taken: please write again", open));
        parts.add(new Answer.Part("Not read as an order", read.passedOver()));
        return new Outcome(wishes.booked().size() + booked.size(), open.size(), parts);
    }

    /** A day's lines and until when they can be changed. */
    private List<Answer.Part> days(BookWishes wishes) {
        List<Answer.Part> parts = new ArrayList<>();
        for (LocalDate day : wishes.days()) {
            List<String> lines = new ArrayList<>();
            for (BookWishes.Told told : wishes.booked())
                if (told.day().equals(day)) lines.add(told.words() + ", from your words “" + told.from() + "”");
            lines.add(untilWhen(wishes, day));
            parts.add(new Answer.Part(DAY.format(day), lines));
        }
        return parts;
    }

    /** What was understood, for whoever books it. */
    private String said(OrderWish wish) {
        String day = " for " + DAY.format(wish.day());
        if (wish instanceof OrderWish.More more)
            return "understood as " + more.packs() + " × " + name(more.product()) + day;
        if (wish instanceof OrderWish.SetTo set)
            return "understood as " + set.packs() + " × " + name(set.product()) + " in all" + day;
        if (wish instanceof OrderWish.Drop drop) return "understood as no " + name(drop.product()) + day;
        if (wish instanceof OrderWish.Twice twice) return "understood as twice the " + name(twice.product()) + day;
        if (wish instanceof OrderWish.SameAs same) return "understood as the same as on " + DAY.format(same.as()) + day;
        return "understood as nothing" + day;
    }

    private String name(String code) {
        return office.shop().findProduct(code).map(Product::name).orElse(code) + " (" + code + ")";
    }

    private ReadMail read(Arrived.Content content) {
        ZoneId zone = office.shop().house().zone();
        OrderReading context = OrderReading.of(
                office.shop(),
                customer,
                office.papers().standing(),
                office.edges().mail().in().words());
        return ReadOrderMail.read(
                new ReadOrderMail.Written(
                        content.subject(), content.body(), LocalDate.ofInstant(content.written(), zone)),
                context);
    }

    private void ask(Question question) {
        open.add("“" + question.words() + "”: " + question.why());
    }

    private String untilWhen(BookWishes wishes, LocalDate day) {
        ZoneId zone = office.shop().house().zone();
        return wishes.changeableUntil(day)
                .map(close -> "It can be changed until " + TIME.format(close.atZone(zone)) + ".")
                .orElse("The book is closed: what came now counts as late, and is made if there is room.");
    }

    /** A CSV goes the drop folder's way, and may name nobody else's lines. */
    private void take(Mail.Attachment table) {
        OrderBook book = office.book();
        OrderSource.Contents contents =
                office.edges().mail().in().tables().read(table, book, office.shop(), office.now());
        boolean others = contents.lines().stream().anyMatch(line -> !isOurs(line))
                || contents.conflicting().stream().anyMatch(line -> !isOurs(line))
                || contents.amendments().stream().anyMatch(amendment -> !isOurs(book, contents, amendment));
        if (others) {
            open.add(table.name() + ": it names lines of somebody else; nothing of it is taken.");
            return;
        }
        for (Problem problem : contents.problems()) open.add(problem.toString());
        office.ledger().orders().add(contents.conflicting());
        if (contents.refused()) return;
        for (OrderLine line : contents.lines())
            booked.add(DAY.format(line.deliveryDate()) + ": " + line.packs() + " " + line.product() + " (order "
                    + line.order() + " line " + line.line() + ")");
        for (Amendment change : contents.amendments())
            booked.add("order " + change.order() + " line " + change.line() + ": now " + change.packs() + " packs");
        office.ledger().orders().add(contents.lines().stream().map(this::byMail).toList());
        office.ledger()
                .orders()
                .amend(contents.amendments().stream().map(this::byMail).toList());
    }

    private boolean isOurs(OrderLine line) {
        return line.customer().equals(customer.code());
    }

    private boolean isOurs(OrderBook book, OrderSource.Contents contents, Amendment amendment) {
        return book.findLine(amendment.order(), amendment.line())
                        .filter(this::isOurs)
                        .isPresent()
                || contents.lines().stream()
                        .anyMatch(line -> line.order().equals(amendment.order())
                                && line.line() == amendment.line()
                                && isOurs(line));
    }

    private OrderLine byMail(OrderLine line) {
        return line.source() == OrderLine.Source.STANDING
                ? line
                : line.takenAs(OrderLine.Source.MAIL, origin, line.takenAt());
    }

    private Amendment byMail(Amendment change) {
        return new Amendment(
                change.order(),
                change.line(),
                change.packs(),
                OrderLine.Source.MAIL,
                origin,
                change.takenAt(),
                change.late());
    }
}
