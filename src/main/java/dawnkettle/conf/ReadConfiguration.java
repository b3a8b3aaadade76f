package dawnkettle.conf;

import dawnkettle.book.StandingOrder;
import dawnkettle.night.NightSettings;
import dawnkettle.shop.House;
import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Reads the whole of {@code conf/}, and gives either all of it or every problem of every file. */
public final class ReadConfiguration {
    private static final String SHOP = "shop.toml";

    private final Path dir;
    private final Problems problems = new Problems();

    private ReadConfiguration(Path dir) {
        this.dir = dir;
    }

    /** @throws BadFile with every problem of every file */
    public static Configuration from(Path dir) {
        return new ReadConfiguration(dir).read();
    }

    private Configuration read() {
        if (!Files.isDirectory(dir))
            throw new BadFile(List.of(
                    new Problem(Place.of(dir.toString()), "there is no such folder", "name the folder with --conf")));
        ConfFolder folder = new ConfFolder(dir, problems);
        Section file = folder.toml(SHOP).orElseGet(() -> Section.unread(SHOP));
        ReadHouse readHouse = new ReadHouse(file);
        House house = readHouse.house();
        Section mail = file.needSection("mail");
        ReadNight readNight = new ReadNight(file, dir);
        NightSettings night = new NightSettings(
                readNight.times(),
                readNight.places(),
                readNight.search(),
                ReadEdges.mailing(mail),
                new ReadRecords(file).records(),
                new ReadRecords(file).buying(house.currency()),
                new ReadCare(file, dir).care());
        ReadEdges edges = new ReadEdges(file, dir);
        var post = edges.post(mail);
        var paper = edges.paper();
        var thermometer = edges.thermometer();
        var labels = edges.labels();
        var typefaces = edges.typefaces();
        ReadShop readShop = new ReadShop(folder, readHouse, labels.design());
        var shop = readShop.shop(house);
        var sheets = new ReadSheets(file, house).settings(shop.materials());
        var orderMail = new ReadOrderMailbox(dir, shop.customers()).read(file);
        List<StandingOrder> standing = readShop.standing();
        var watch = new ReadCare(file, dir).watch();
        file.noMore();
        problems.throwIfAny();
        return new Configuration(
                shop, standing, night, post, paper, sheets, thermometer, labels, typefaces, orderMail, watch);
    }
}
