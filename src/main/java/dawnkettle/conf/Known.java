package dawnkettle.conf;

/** The codes that the files declare, so that each file can refer to the others. */
final class Known {
    final Names materials = new Names("material", "materials.csv");
    final Names soakGroups = new Names("soak group of any beans", "materials.csv");
    final Names stages = new Names("stage of any station", "stations.toml");
    final Names recipes = new Names("recipe", "recipes.toml");
    final Names marks = new Names("lot mark", "recipes.toml");
    final Names products = new Names("product", "products.csv");
    final Names routes = new Names("route", "routes.csv");
    final Names priceLists = new Names("price list", "prices.csv");
    final Names customers = new Names("customer", "customers.csv");
}
