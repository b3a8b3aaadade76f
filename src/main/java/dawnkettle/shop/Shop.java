package dawnkettle.shop;

import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.function.Function;

/** Everything the owner wrote down, checked and whole. */
public record Shop(
        House house,
        List<Product> products,
        List<Recipe> recipes,
        Floor floor,
        List<Route> routes,
        List<Customer> customers,
        ShopCalendar calendar,
        List<Material> materials,
        List<ListPrice> prices,
        Climate climate,
        Costs costs) {
    public Shop {
        products = List.copyOf(products);
        recipes = List.copyOf(recipes);
        routes = List.copyOf(routes);
        customers = List.copyOf(customers);
        materials = List.copyOf(materials);
        prices = List.copyOf(prices);
    }

    /** The same shop making things otherwise. */
    public Shop withRecipes(List<Recipe> others) {
        return new Shop(house, products, others, floor, routes, customers, calendar, materials, prices, climate, costs);
    }

    /** The same shop in another room. */
    public Shop withFloor(Floor other) {
        return new Shop(
                house, products, recipes, other, routes, customers, calendar, materials, prices, climate, costs);
    }

    /** The same shop with other vans. */
    public Shop withRoutes(List<Route> others) {
        return new Shop(
                house, products, recipes, floor, others, customers, calendar, materials, prices, climate, costs);
    }

    /** The same shop at other rates. */
    public Shop withCosts(Costs others) {
        return new Shop(
                house, products, recipes, floor, routes, customers, calendar, materials, prices, climate, others);
    }

    public Product product(String code) {
        return found(findProduct(code), "product", code);
    }

    public Optional<Product> findProduct(String code) {
        return find(products, Product::code, code);
    }

    public Recipe recipe(String code) {
        return found(find(recipes, Recipe::code, code), "recipe", code);
    }

    public Recipe recipeOf(Product product) {
        return recipe(product.recipe());
    }

    public Route route(String code) {
        return found(find(routes, Route::code, code), "route", code);
    }

    public Customer customer(String code) {
        return found(findCustomer(code), "customer", code);
    }

    public Optional<Customer> findCustomer(String code) {
        return find(customers, Customer::code, code);
    }

    public Material material(String code) {
        return found(findMaterial(code), "material", code);
    }

    public Optional<Material> findMaterial(String code) {
        return find(materials, Material::code, code);
    }

    private static <T> Optional<T> find(List<T> all, Function<T, String> codeOf, String code) {
        return all.stream().filter(one -> codeOf.apply(one).equals(code)).findFirst();
    }

    private static <T> T found(Optional<T> one, String kind, String code) {
        return one.orElseThrow(() -> new NoSuchElementException("no " + kind + " " + code));
    }
}
