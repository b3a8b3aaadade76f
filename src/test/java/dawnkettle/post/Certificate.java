package dawnkettle.post;

import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.KeyStore;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManagerFactory;

/** A fresh self-signed certificate for a name, made by the JDK's own tool. */
record Certificate(Path store) {
    static final String PASSWORD = "soymilk-for-tests";

    static Certificate of(String name, Path folder) throws Exception {
        Path store = folder.resolve(name + ".p12");
        Process tool = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "keytool")
                                .toString(),
                        "-genkeypair",
                        "-alias",
                        "mail",
                        "-keyalg",
                        "EC",
                        "-dname",
                        "CN=" + name,
                        "-ext",
                        "san=dns:" + name,
                        "-validity",
                        "2",
                        "-storetype",
                        "PKCS12",
                        "-keystore",
                        store.toString(),
                        "-storepass",
                        PASSWORD)
                .redirectErrorStream(true)
                .start();
        String said = new String(tool.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        if (tool.waitFor() != 0) throw new IllegalStateException(said);
        return new Certificate(store);
    }

    /** Shows this certificate, and trusts it alone. */
    SSLContext context() throws Exception {
        KeyStore keys = KeyStore.getInstance("PKCS12");
        try (InputStream in = Files.newInputStream(store)) {
            keys.load(in, PASSWORD.toCharArray());
        }
        KeyStore trusted = KeyStore.getInstance("PKCS12");
        trusted.load(null, null);
        trusted.setCertificateEntry("mail", keys.getCertificate("mail"));
        KeyManagerFactory own = KeyManagerFactory.getInstance(KeyManagerFactory.getDefaultAlgorithm());
        own.init(keys, PASSWORD.toCharArray());
        TrustManagerFactory trust = TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
        trust.init(trusted);
        SSLContext context = SSLContext.getInstance("TLS");
        context.init(own.getKeyManagers(), trust.getTrustManagers(), null);
        return context;
    }
}
