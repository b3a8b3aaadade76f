package dawnkettle.night;

import dawnkettle.mail.Arrived;
import dawnkettle.shop.Customer;
import dawnkettle.shop.Shop;
import java.util.Optional;
import java.util.Set;

/** Who may write to the clerk, and what. */
final class Correspondents {
    private final Shop shop;
    private final OrderMailSettings settings;

    Correspondents(Shop shop, OrderMailSettings settings) {
        this.shop = shop;
        this.settings = settings;
    }

    /** Somebody known. */
    sealed interface Known permits Owner, Crew, Orderer {
        /** How the ledger names them: no address. */
        String word();
    }

    /** May write every word of the command line. */
    record Owner() implements Known {
        @Override
        public String word() {
            return "owner";
        }
    }

    /** May write some of them. */
    record Crew(Set<String> permitted) implements Known {
        @Override
        public String word() {
            return "crew";
        }
    }

    /** May order for itself. */
    record Orderer(Customer customer) implements Known {
        @Override
        public String word() {
            return customer.code();
        }
    }

    /** Whom a mail says it is from, whether that is so or not. */
    Optional<Known> find(Arrived.Sender sender) {
        Optional<String> from = sender.from();
        if (from.filter(settings.owners()::contains).isPresent()) return Optional.of(new Owner());
        Optional<Known> crew = from.map(settings.crew()::get).map(Crew::new);
        return crew.or(() -> from.flatMap(this::customerAt))
                .or(() ->
                        sender.to().stream().flatMap(to -> tagged(to).stream()).findFirst());
    }

    private Optional<Known> customerAt(String address) {
        return shop.customers().stream()
                .filter(customer -> customer.mails().contains(address))
                .findFirst()
                .map(Orderer::new);
    }

    /** The customer to whom an address with a token behind its plus was given. */
    private Optional<Known> tagged(String address) {
        int plus = address.indexOf('+');
        int at = address.lastIndexOf('@');
        if (plus < 0 || at < plus) return Optional.empty();
        return Optional.ofNullable(settings.tags().get(address.substring(plus + 1, at)))
                .flatMap(shop::findCustomer)
                .map(Orderer::new);
    }
}
