package org.dentary.platform.database;

import jakarta.annotation.Priority;
import jakarta.interceptor.AroundInvoke;
import jakarta.interceptor.Interceptor;
import jakarta.interceptor.InvocationContext;
import jakarta.transaction.Status;
import jakarta.transaction.TransactionManager;
import jakarta.transaction.Transactional;
import java.sql.SQLException;
import java.util.Set;

/**
 * Of two that write the first of a thing at once, the second finds the first's key in its way, though it may bring the very
 * same; of two that lock the same rows, one may have to give way. Either is done once more from the beginning, finds what the
 * other recorded, and is answered as if it had come after it.
 */
@Transactional
@Interceptor
@Priority(Interceptor.Priority.PLATFORM_BEFORE + 100)
class OnceMore {
    /** PostgreSQL's unique_violation, deadlock_detected and serialization_failure. */
    private static final Set<String> AT_ONCE = Set.of("23505", "40P01", "40001");

    private static final int MOST = 3;

    private final TransactionManager transactions;

    OnceMore(TransactionManager transactions) {
        this.transactions = transactions;
    }

    /** Only who begins the transaction can begin it again. */
    @AroundInvoke
    Object around(InvocationContext call) throws Exception {
        if (transactions.getStatus() != Status.STATUS_NO_TRANSACTION) {
            return call.proceed();
        }
        for (int times = 1; ; times++) {
            try {
                return call.proceed();
            } catch (Exception fault) {
                if (times == MOST || !isOfHaste(fault)) {
                    throw fault;
                }
            }
        }
    }

    private static boolean isOfHaste(Throwable fault) {
        for (Throwable cause = fault; cause != null; cause = cause.getCause()) {
            if (cause instanceof SQLException sql && AT_ONCE.contains(String.valueOf(sql.getSQLState()))) {
                return true;
            }
        }
        return false;
    }
}
