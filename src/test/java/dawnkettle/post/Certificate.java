package dawnkettle.post;

import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.KeyStore;
import java.util.ArrayList;
import java.util.List;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManagerFactory;

/** A fresh self-signed certificate for a name, made by the JDK's own tool. */
public record Certificate(Path store) {
    static final String PASSWORD = "soymilk-for-tests";

    public static Certificate of(String name, Path folder) throws Exception {
        Path store = folder.resolve(name + ".p12");
        generate(store, "mail", name, List.of("-ext", "san=dns:" + name, "-validity", "2"));
        return new Certificate(store);
    }

    /** One whose two days were over yesterday, signed by somebody whose are not: whom one trusts is not asked for the date. */
    public static Certificate expired(String name, Path folder) throws Exception {
        Path store = folder.resolve(name + "-expired.p12");
        generate(store, "signer", "Signer", List.of("-ext", "bc:c", "-startdate", "-9d", "-validity", "30"));
        generate(store, "mail", name, List.of("-ext", "san=dns:" + name, "-validity", "2"));
        String request = keytool(store, List.of("-certreq", "-alias", "mail"));
        Path asked = Files.writeString(folder.resolve(name + ".csr"), request);
        String signed = keytool(
                store,
                List.of(
                        "-gencert",
                        "-rfc",
                        "-alias",
                        "signer",
                        "-infile",
                        asked.toString(),
                        "-ext",
                        "san=dns:" + name,
                        "-startdate",
                        "-3d",
                        "-validity",
                        "2"));
        Path answer = Files.writeString(folder.resolve(name + ".crt"), signed);
        keytool(store, List.of("-importcert", "-noprompt", "-alias", "mail", "-file", answer.toString()));
        return new Certificate(store);
    }

    private static void generate(Path store, String alias, String name, List<String> more) throws Exception {
        List<String> words = new ArrayList<>(List.of(
                "-genkeypair", "-alias", alias, "-keyalg", "EC", "-dname", "CN=" + name, "-storetype", "PKCS12"));
        words.addAll(more);
        keytool(store, words);
    }

    private static String keytool(Path store, List<String> words) throws Exception {
        List<String> all = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "keytool").toString()));
        all.addAll(words);
        all.addAll(List.of("-keystore", store.toString(), "-storepass", PASSWORD));
        Process tool = new ProcessBuilder(all).redirectErrorStream(true).start();
        String said = new String(tool.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        if (tool.waitFor() != 0) throw new IllegalStateException(said);
        return said.substring(Math.max(0, said.indexOf("-----BEGIN")));
    }

    /** Shows this certificate, and trusts it alone. */
    public SSLContext context() throws Exception {
        KeyStore keys = KeyStore.getInstance("PKCS12");
        try (InputStream in = Files.newInputStream(store)) {
            keys.load(in, PASSWORD.toCharArray());
        }
        KeyStore trusted = KeyStore.getInstance("PKCS12");
        trusted.load(null, null);
        String trustedOne = keys.containsAlias("signer") ? "signer" : "mail";
        trusted.setCertificateEntry("mail", keys.getCertificate(trustedOne));
        KeyManagerFactory own = KeyManagerFactory.getInstance(KeyManagerFactory.getDefaultAlgorithm());
        own.init(keys, PASSWORD.toCharArray());
        TrustManagerFactory trust = TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
        trust.init(trusted);
        SSLContext context = SSLContext.getInstance("TLS");
        context.init(own.getKeyManagers(), trust.getTrustManagers(), null);
        return context;
    }
}
