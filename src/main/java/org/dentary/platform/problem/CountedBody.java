package org.dentary.platform.problem;

import io.vertx.core.http.HttpHeaders;
import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.WebApplicationException;
import jakarta.ws.rs.ext.Provider;
import jakarta.ws.rs.ext.ReaderInterceptor;
import jakarta.ws.rs.ext.ReaderInterceptorContext;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/** Counts what comes without an announced length, and refuses it (413) at the first byte beyond the limit. */
@Provider
public class CountedBody implements ReaderInterceptor {
    private final BodyLimit limit;
    private final RoutingContext request;

    CountedBody(BodyLimit limit, RoutingContext request) {
        this.limit = limit;
        this.request = request;
    }

    @Override
    public Object aroundReadFrom(ReaderInterceptorContext body) throws IOException {
        if (request.request().getHeader(HttpHeaders.CONTENT_LENGTH) == null) {
            body.setInputStream(new Counted(body.getInputStream(), limit.most()));
        }
        return body.proceed();
    }

    private static final class Counted extends FilterInputStream {
        private long left;

        private Counted(InputStream in, long most) {
            super(in);
            left = most;
        }

        @Override
        public int read() throws IOException {
            int one = in.read();
            count(one < 0 ? 0 : 1);
            return one;
        }

        @Override
        public int read(byte[] into, int from, int length) throws IOException {
            int some = in.read(into, from, length);
            count(Math.max(0, some));
            return some;
        }

        /** Does nothing: the stream beneath would first wait for all that is still to come. */
        @Override
        public void close() {}

        private void count(int some) {
            left -= some;
            if (left < 0) {
                throw new WebApplicationException(413);
            }
        }
    }
}
