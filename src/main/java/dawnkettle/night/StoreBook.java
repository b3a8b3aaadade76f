package dawnkettle.night;

import dawnkettle.cost.PurchaseAdvice;
import dawnkettle.stock.ContainerBalance;
import dawnkettle.stock.Fact;
import dawnkettle.stock.MaterialBook;
import dawnkettle.stock.StockLot;
import dawnkettle.stock.Web;
import java.time.LocalDate;
import java.util.List;

/** What lies in the store and the cold room before a production day, what to order, and whose containers are where. */
public final class StoreBook {
    private final Office office;
    private final LocalDate productionDate;
    private final MaterialBook materials;

    public StoreBook(Office office, LocalDate productionDate) {
        this.office = office;
        this.productionDate = productionDate;
        this.materials = office.ledger().stock().materials(office.shop(), productionDate, office.now());
    }

    public MaterialBook materials() {
        return materials;
    }

    public List<StockLot> packs() {
        return office.ledger().stock().finished(office.shop(), productionDate);
    }

    /** The most urgent first. */
    public List<PurchaseAdvice.Line> advice() {
        LocalDate today =
                LocalDate.ofInstant(office.now(), office.shop().house().zone());
        return new PurchaseAdvice(
                        office.shop(), materials, office.papers().settings().buying(), today)
                .lines();
    }

    public List<ContainerBalance> containers() {
        Web web = office.ledger().trace().web(office.shop(), office.now());
        return ContainerBalance.of(
                office.shop(),
                web.batches().stream()
                        .flatMap(batch -> web.handedOf(batch.lot()).stream())
                        .toList(),
                office.ledger().records().all(Fact.Kind.RETURNED, Fact.Kind.CONTAINERS));
    }
}
