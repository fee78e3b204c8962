/**
 * Brings up PostgreSQL, embedded under the data folder or external, with an owner that migrates and a service role that
 * may do little. It holds no SQL of any room. Start reading at {@link org.dentary.platform.database.DatabaseStart}.
 */
package org.dentary.platform.database;
